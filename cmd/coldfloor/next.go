package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/next"
	"coldfloor/internal/players"
	"coldfloor/internal/runs"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions/weeks"
)

// nextOptions are the flags of the next command.
type nextOptions struct {
	journal, settings string
	asJSON            bool
	week              int
	player, out       string
	players           string
	force             bool
	same              []string
}

// newNext returns the command that proposes the next week.
func newNext() *cobra.Command {
	var o nextOptions
	c := &cobra.Command{
		Use:   "next WEEKS [FOLDER|FILE…]",
		Short: "Propose each player's next week, with the reasons",
		Long: `Propose for each player how the plan of weeks goes on, from the journal or from
the journals named: as planned, hold (nothing is added), less (a lighter week),
or ask (too little is known). Every reason is shown with its figures, its limit
and its source; you can change the limits in the settings. The days are those
that keep jump days furthest apart, then furthest from matches; no more of them
than planned fall on the day of a match or the day before.

Nothing is changed by itself. With -o the player's whole plan is written with
the proposal in it, for the coach to change.`,
		Args: argsError(cobra.MinimumNArgs(1)),
		RunE: func(c *cobra.Command, args []string) error { return o.run(c, args[0], args[1:]) },
	}
	journalFlag(c.Flags(), &o.journal)
	settingsFlag(c, &o.settings)
	f := c.Flags()
	f.BoolVar(&o.asJSON, "json", false, "write JSON")
	weekFlag(c, &o.week, "propose for week `N`; by default the week after today's")
	f.StringVar(&o.players, "players", "", "the players' `FILE`: their days away, and players who have logged nothing")
	f.StringVar(&o.player, "player", "", "only for the player `NAME`")
	f.StringVarP(&o.out, "output", "o", "", "write that player's plan with the proposal in it to `FILE`, or - to print it")
	f.BoolVar(&o.force, "force", false, "replace FILE if it exists")
	sameFlag(c, &o.same)
	atMostOne(c, "json", "output")
	return c
}

// run proposes.
func (o *nextOptions) run(c *cobra.Command, name string, journals []string) error {
	mine, err := loadSettings(o.settings)
	if err != nil {
		return err
	}
	plan, err := openWeeks(c, name)
	if err != nil {
		return err
	}
	proposals, left, err := o.propose(c, plan, journals, next.LimitsOf(mine.Limits))
	if err != nil {
		return err
	}
	switch {
	case o.out == "-":
		err = printPlan(c.OutOrStdout(), proposals[0])
	case o.out != "":
		err = next.WritePlan(o.out, proposals[0], wholefile.Options{Mode: 0o644, Force: o.force, Inputs: append(journals, plan.Files()...)})
	case o.asJSON:
		err = writeJSON(c.OutOrStdout(), proposals)
	default:
		err = next.Text(c.OutOrStdout(), plan, proposals)
	}
	if err != nil {
		return err
	}
	return left
}

// printPlan prints a player's plan with the proposal in it.
func printPlan(w io.Writer, p next.Proposal) error {
	text, err := p.Plan()
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

// propose returns the proposals asked for, and the error of journals that could
// not be read to their end.
func (o *nextOptions) propose(c *cobra.Command, plan *weeks.Plan, journals []string, l next.Limits) (all []next.Proposal, left, err error) {
	now := time.Now()
	week, err := o.weekOf(plan, units.DateOf(now))
	if err != nil {
		return nil, nil, err
	}
	squad, left, err := o.read(c, journals, now)
	if err != nil {
		return nil, nil, err
	}
	var list []players.Player
	if o.players != "" {
		if list, err = players.Read(o.players); err != nil {
			return nil, nil, err
		}
		if err := players.CheckEasier(list, plan); err != nil {
			return nil, nil, err
		}
	}
	if all, err = squad.Propose(plan, week, now, l, list); err != nil {
		return nil, nil, err
	}
	all, err = o.choose(all)
	return all, left, err
}

// weekOf returns the week to propose for.
func (o *nextOptions) weekOf(plan *weeks.Plan, today units.Date) (int, error) {
	week := o.week
	if week == 0 {
		week = max(plan.WeekOf(today)+1, 1)
	}
	if o.week == 0 && week > plan.Count {
		return 0, fault.New(fmt.Sprintf("--week N proposes for one of its %d weeks", plan.Count), "%s ends on %s, and has no week after today's", plan.Name, plan.End().Short())
	}
	return week, checkWeek(plan, week)
}

// read reads the journals.
func (o *nextOptions) read(c *cobra.Command, paths []string, now time.Time) (next.Squad, error, error) {
	if len(paths) == 0 {
		paths = []string{o.journal}
		if _, err := os.Stat(o.journal); err != nil && !c.Flags().Changed("journal") {
			return nil, nil, fault.New("name the journals that the players sent, or the folder they are in", "there is no journal yet")
		}
	}
	reading, end := longReading(c, "reading the journals", runs.TwoThirds)
	defer end()
	reading.Same = o.same
	pile, err := runs.Gather(paths, reading)
	if err != nil {
		return nil, nil, err
	}
	defer pile.Close()
	squad, err := next.Read(pile, now)
	end()
	return squad, tellLeftOut(c.ErrOrStderr(), pile.Files), err
}

// choose leaves the player asked for.
func (o *nextOptions) choose(all []next.Proposal) ([]next.Proposal, error) {
	var names []string
	for _, p := range all {
		names = append(names, p.Player)
	}
	if o.player != "" {
		all = slices.DeleteFunc(all, func(p next.Proposal) bool { return !strings.EqualFold(p.Player, o.player) })
	}
	switch {
	case len(names) == 0:
		return nil, fault.New("a session that is run is logged; coldfloor log add logs one done on paper", "no session is logged in these journals")
	case len(all) == 0:
		return nil, usageError{fmt.Sprintf("there is no player %q in these journals", o.player), "the players are " + strings.Join(names, ", ")}
	case o.out != "" && len(all) > 1:
		return nil, usageError{"-o writes the plan of one player", "add --player and one of " + strings.Join(names, ", ")}
	}
	return all, nil
}
