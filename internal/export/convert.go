package export

import (
	"strings"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/internal/units"
)

// sessionRow returns the row of a run.
func sessionRow(r runs.Run, t review.Tolerance) *SessionRow {
	row := &SessionRow{Player: r.Player, RunID: r.ID, StartedAt: r.Start, Date: DateOf(r.Start), Title: r.Title(), State: string(r.State),
		OnPaper: r.OnPaper(), ElapsedS: r.Elapsed.Seconds(), Pauses: int64(r.Pauses), ContactsDone: int64(r.Contacts()),
		RPE: r.Rating.RPE, Pain: r.Rating.Pain, PainWhere: r.Rating.Where, Note: r.Rating.Note, File: r.File}
	if load, rated := r.Load(); rated {
		load = units.Thousandths(load)
		row.LoadAU = &load
	}
	row.prescribed(r.Run)
	if !row.OnPaper {
		row.setsDone(r.Sets)
	}
	row.rests(r.Rests, t)
	for _, l := range r.Amendments {
		row.Corrected = row.Corrected || l.Event == journal.EventCorrect
	}
	return row
}

// prescribed fills in what the session's start tells.
func (row *SessionRow) prescribed(r *journal.Run) {
	if done := r.RoundsDone(); done != nil {
		row.RoundsDone = sum(done, func(n int) int { return n })
	}
	if r.Started == nil {
		return
	}
	row.PlannedS = &r.Started.TotalS
	row.RoundsPrescribed = sum(r.Started.Blocks, func(b journal.PlannedBlock) int { return b.Rounds })
	row.SetsPrescribed = sum(r.Started.Blocks, func(b journal.PlannedBlock) int { return b.Sets })
	row.ContactsPrescribed = sum(r.Started.Blocks, func(b journal.PlannedBlock) int { return b.Contacts })
}

func (row *SessionRow) setsDone(sets []journal.Set) {
	row.SetsDone = sum(sets, func(s journal.Set) int {
		if engine.Outcome(s.Outcome) == engine.Done {
			return 1
		}
		return 0
	})
	row.RepsDone = sum(sets, func(s journal.Set) int { return s.Reps })
}

func (row *SessionRow) rests(rests []journal.Rest, t review.Tolerance) {
	for i := range rests {
		if _, v := t.Judge(&rests[i]); v != review.Left {
			row.RestPrescribedS += rests[i].PrescribedS
			row.RestTakenS += rests[i].TakenS
		}
	}
	row.RestPrescribedS, row.RestTakenS = units.Thousandths(row.RestPrescribedS), units.Thousandths(row.RestTakenS)
}

// setRows returns the rows of a run's sets.
func setRows(r runs.Run) []*SetRow {
	rows := make([]*SetRow, len(r.Sets))
	for i, s := range r.Sets {
		rows[i] = &SetRow{Player: r.Player, RunID: r.ID, Date: DateOf(r.Start), Block: int64(s.Block), Round: int64(s.Round),
			Exercise: int64(s.Exercise), Name: s.Name, Outcome: s.Outcome, EndedBy: s.End, ByHand: s.ByHand, Paced: s.Paced,
			Easier: s.Easier, Sides: strings.Join(s.Sides, " "), PlannedS: s.PlannedS, TakenS: s.TakenS, PausedS: s.PausedS,
			PlannedReps: int64(s.Planned), Reps: int64(s.Reps), Contacts: int64(s.Contacts)}
		if blocks := r.Blocks(); s.Block >= 1 && s.Block <= len(blocks) {
			rows[i].BlockTitle = &blocks[s.Block-1].Title
		}
	}
	return rows
}

// restRows returns the rows of a run's rests.
func restRows(r runs.Run, t review.Tolerance) []*RestRow {
	rows := make([]*RestRow, len(r.Rests))
	for i, rest := range r.Rests {
		deviation, verdict := t.Judge(&rest)
		rows[i] = &RestRow{Player: r.Player, RunID: r.ID, Date: DateOf(r.Start), Number: int64(i + 1), Block: int64(rest.Block),
			Round: int64(rest.Round), Exercise: int64(rest.Exercise), PrescribedS: rest.PrescribedS, TakenS: rest.TakenS,
			PausedS: rest.PausedS, DeviationS: deviation.Seconds(), EndedBy: rest.End, Verdict: string(verdict)}
	}
	return rows
}

// sum adds a figure of all elements up.
func sum[T any](all []T, of func(T) int) *int64 {
	n := int64(0)
	for _, v := range all {
		n += int64(of(v))
	}
	return &n
}
