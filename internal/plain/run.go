package plain

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/engine"
	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/rating"
	"coldfloor/internal/run"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
)

// Options says where the lines of a run come from and go to.
type Options struct {
	Flow   *run.Flow // not opened yet
	In     io.Reader // what the player types; nil: there is no keyboard
	Out    io.Writer // the lines of the run
	Err    io.Writer // questions and notices around it
	Stamps bool      // each line says when it happened
}

// Run runs a session as plain lines, from the questions before it to what the
// player says after it.
func Run(ctx context.Context, o Options) error {
	s := session{Options: o}
	if o.In != nil {
		s.lines = Lines(o.In)
	}
	o.Flow.Open()
	if r := o.Flow.PutOff(); r != nil {
		s.nameUnrated(r)
	}
	ready, err := s.settle(ctx)
	if err != nil || !ready {
		return err
	}
	plan := o.Flow.Plan()
	printer := NewPrinter(plan, o.Flow.Language(), o.Out, o.In != nil, o.Stamps)
	active, err := o.Flow.Start(printer)
	if err != nil || !s.begin(ctx, printer) {
		return err
	}
	active.AwaitSound(ctx)
	h := driver{run: active, printer: printer}
	if err := h.drive(ctx, s.lines); err != nil {
		return err
	}
	active.AwaitQuiet(ctx)
	return s.after(ctx, active)
}

// session is one run with what was settled before it.
type session struct {
	Options
	lines <-chan string
}

// settle shows and asks what the flow needs, until the run can start. It
// reports whether it can.
func (s *session) settle(ctx context.Context) (ready bool, err error) {
	for {
		switch need := s.Flow.Next(); {
		case need.Ask != nil:
			s.ask(ctx, need.Ask)
		case need.Rate != nil:
			s.rateEarlier(ctx, need.Rate)
		case need.Choose:
			return false, errors.New(s.Flow.Language().Plain.NoSession(strings.Join(s.offered(), ", ")))
		case need.Start:
			return true, nil
		default:
			return false, s.Flow.Err()
		}
	}
}

// offered returns the built-in sessions that may be chosen.
func (s *session) offered() []string {
	var names []string
	offers, _ := run.Catalogue("")
	for _, o := range offers {
		if s.Flow.Offered(o.Plan) {
			names = append(names, o.Plan.Session.Name)
		}
	}
	return names
}

// ask shows an Ask and acts on the answer. With nobody to ask, what is meant for
// that is done; a player who has left starts nothing.
func (s *session) ask(ctx context.Context, q *run.Ask) {
	fmt.Fprintln(s.Err, safetext.Clean(q.Title))
	for _, p := range q.Text {
		fault.PrintLines(s.Err, p)
	}
	if s.lines == nil {
		if q.Hint != "" {
			fmt.Fprintln(s.Err, s.Flow.Language().Plain.Hint+" "+q.Hint)
		}
		s.Flow.Answer(q.Alone)
		return
	}
	for {
		fmt.Fprint(s.Err, prompt(s.Flow.Language(), q))
		text, ok := s.line(ctx)
		if !ok {
			fmt.Fprintln(s.Err)
			s.Flow.Leave()
			return
		}
		for _, a := range q.Answers {
			if text == a.Key || text == "" && a.Enter {
				s.Flow.Answer(a)
				return
			}
		}
	}
}

// prompt names the answers.
func prompt(l *text.Language, q *run.Ask) string {
	parts := make([]string, len(q.Answers))
	for i, a := range q.Answers {
		key := a.Key
		switch {
		case key == "enter":
			key = "Enter"
		case a.Enter:
			key += l.Flow.OrEnter
		}
		parts[i] = key + ": " + safetext.Clean(a.Label)
	}
	return strings.Join(parts, "; ") + "? "
}

// line returns what the player types next, in small letters, and false if
// nobody is there any more.
func (s *session) line(ctx context.Context) (string, bool) {
	select {
	case text, ok := <-s.lines:
		return strings.ToLower(strings.TrimSpace(text)), ok
	case <-ctx.Done():
		return "", false
	}
}

// begin says what is to be run and, if there is a keyboard, waits for Enter
// before the lead-in, so that all of it can be heard. It reports whether to
// start.
func (s *session) begin(ctx context.Context, p *Printer) bool {
	p.print(safetext.Clean(p.start()))
	for s.lines != nil {
		fmt.Fprint(s.Err, s.Flow.Language().Plain.EnterStarts+": ")
		switch text, ok := s.line(ctx); {
		case !ok || text == "q":
			return false
		case text == "?":
			fmt.Fprintln(s.Err, s.Flow.Language().Plain.Help)
		default:
			return true
		}
	}
	return true
}

// nameUnrated says that a run was not rated, and what rates it.
func (s *session) nameUnrated(r *journal.Run) {
	l := s.Flow.Language()
	fmt.Fprintln(s.Err, l.Plain.NotRated(safetext.Clean(s.Flow.Called(r)), l.Form.AskAfter))
	fmt.Fprintln(s.Err, l.Plain.RateHint)
}

// rateEarlier asks for the effort of a run that was not rated, if somebody is
// there. Enter alone leaves it as it is.
func (s *session) rateEarlier(ctx context.Context, r *journal.Run) {
	if s.lines == nil {
		s.nameUnrated(r)
		s.Flow.NotAsked()
		return
	}
	l := s.Flow.Language()
	fmt.Fprintln(s.Err, l.Plain.NotRated(safetext.Clean(s.Flow.Called(r)), l.Form.AskAfter))
	said, err := rating.Ask(s.reader(ctx), s.Err, r, l)
	if err == nil {
		err = s.Flow.Rate(said)
	}
	if err != nil {
		fault.PrintLines(s.Err, run.Why(l, err))
		s.Flow.RateLater()
		return
	}
	s.cautionOfPain(&said)
}

// cautionOfPain says what to do about pain that was noted.
func (s *session) cautionOfPain(r *journal.Rating) {
	if r.Pain != nil && *r.Pain {
		fmt.Fprintln(s.Err, s.Flow.Language().PainNoted())
	}
}

// after asks what the player has to say, if there is a keyboard, and tells where
// it can be said if not.
func (s *session) after(ctx context.Context, a *run.Active) error {
	if !s.Flow.Logged() {
		return nil
	}
	end := ""
	switch {
	case a.View().Phase != engine.Over:
		end = s.Flow.Language().Step.Kept
	case a.Rehearsal():
		end = s.Flow.Language().Plain.Rehearsal
	case s.lines == nil || a.Alone() || ctx.Err() != nil:
		end = s.Flow.Language().Plain.RateLast
	}
	if end != "" {
		if a.Written() == nil { // what is not is told when the log is closed
			fmt.Fprintln(s.Err, end)
		}
		return nil
	}
	s.results(ctx, a)
	said, err := rating.Ask(s.reader(ctx), s.Err, a.Done(), s.Flow.Language())
	if err != nil {
		return err
	}
	s.cautionOfPain(&said)
	for err = a.Save(said); err != nil; err = a.Save(said) {
		fault.PrintLines(s.Err, run.Why(s.Flow.Language(), err))
		fmt.Fprint(s.Err, s.Flow.Language().Plain.TryAgain)
		switch text, ok := s.line(ctx); {
		case !ok || text == "q":
			return nil // what is lost is told when the log is closed
		case text == "w":
			file, err := a.SaveElsewhere(said)
			if err == nil {
				fmt.Fprintln(s.Err, s.Flow.Language().Form.WrittenTo(safetext.Clean(file)))
				return nil
			}
			fault.PrintLines(s.Err, run.Why(s.Flow.Language(), err))
		}
	}
	fmt.Fprintln(s.Err, a.LoggedAs(said, s.Flow.Language()))
	return nil
}
