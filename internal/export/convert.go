package export

import (
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/internal/units"
)

// sessionRow returns the row of a run.
func sessionRow(r runs.Run, t review.Tolerance) *SessionRow {
	row := &SessionRow{Player: r.Player, RunID: r.ID, StartedAt: r.Start, Date: DateOf(r.Start), Title: r.Title(), State: string(r.State),
		OnPaper: r.OnPaper(), ElapsedS: r.Elapsed.Seconds(), Pauses: int64(r.Pauses), ContactsDone: known(r.Contacts()), RepsDone: known(r.Reps()), SetsDone: known(r.SetsDone()),
		RPE: r.Rating.RPE, Pain: r.Rating.Pain, PainWhere: r.PainWhere(), Note: r.Notes(), File: r.File}
	if load, rated := r.Load(); rated {
		load = units.Thousandths(load)
		row.LoadAU = &load
	}
	row.prescribed(r.Run)
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
	contacts := journal.CountOf(0)
	for _, b := range r.Started.Blocks {
		contacts = contacts.Add(b.Contacts)
	}
	row.ContactsPrescribed = known(contacts)
}

// known returns a count, or nil unless all of it is known.
func known(c journal.Count) *int64 {
	if !c.Known {
		return nil
	}
	n := int64(c.N)
	return &n
}

// dateOf returns the date of a moment of the run, or of the run if nobody
// knows the moment.
func dateOf(at time.Time, r *journal.Run) Date {
	if at.IsZero() {
		return DateOf(r.Start)
	}
	return DateOf(at)
}

// ended returns when something ended, or nil if nobody knows.
func ended(at time.Time) *time.Time {
	if at.IsZero() {
		return nil
	}
	return &at
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
	again := map[journal.Place]bool{}
	for i, s := range r.Sets {
		rows[i] = &SetRow{Player: r.Player, RunID: r.ID, Date: dateOf(s.At, r.Run), Block: int64(s.Block), Round: int64(s.Round),
			Exercise: int64(s.Exercise), Name: s.Name, Outcome: s.Outcome, EndedBy: s.End, ByHand: s.ByHand, Paced: s.Paced,
			Easier: s.Easier, Sides: strings.Join(s.Sides, " "), PlannedS: s.PlannedS, TakenS: s.TakenS, PausedS: s.PausedS,
			PlannedReps: int64(s.Planned), Reps: int64(s.Reps), Contacts: known(s.Contacts),
			EndedAt: ended(s.At), Again: again[s.Place]}
		again[s.Place] = true
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
		rows[i] = &RestRow{Player: r.Player, RunID: r.ID, Date: dateOf(rest.At, r.Run), EndedAt: ended(rest.At), Number: int64(i + 1), Block: int64(rest.Block),
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
