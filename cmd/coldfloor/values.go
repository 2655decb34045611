package main

import (
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"coldfloor/internal/fault"
	"coldfloor/internal/units"
)

// choice is a flag that takes one of some words.
type choice struct {
	value *string
	words []string
}

// choiceFlag gives the command a flag that takes one of some words, or is left
// out. A wrong one is refused before the command does anything.
func choiceFlag(c *cobra.Command, value *string, name, usage string, words ...string) {
	c.Flags().Var(choice{value, words}, name, usage)
}

// String implements pflag.Value.
func (c choice) String() string {
	if c.value == nil {
		return ""
	}
	return *c.value
}

// Set implements pflag.Value.
func (c choice) Set(text string) error {
	if !slices.Contains(c.words, text) {
		return fault.New("write "+orOf(c.words), "is not known")
	}
	*c.value = text
	return nil
}

// Type implements pflag.Value.
func (c choice) Type() string { return "word" }

// orOf lists words to choose from.
func orOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// weekNumber is a flag that takes a week of a plan.
type weekNumber struct{ value *int }

// weekFlag gives the command a flag --week.
func weekFlag(c *cobra.Command, value *int, usage string) {
	c.Flags().Var(weekNumber{value}, "week", usage)
}

// String implements pflag.Value.
func (w weekNumber) String() string {
	if w.value == nil || *w.value == 0 {
		return ""
	}
	return strconv.Itoa(*w.value)
}

// Set implements pflag.Value.
func (w weekNumber) Set(text string) error {
	n, err := strconv.Atoi(text)
	if err == nil && n < 1 {
		return fault.New("the first week is 1", "is not a week")
	}
	*w.value = n
	return err
}

// Type implements pflag.Value.
func (w weekNumber) Type() string { return "week" }

// day is a flag that takes a date.
type day struct{ value *string }

// String implements pflag.Value.
func (d day) String() string {
	if d.value == nil {
		return ""
	}
	return *d.value
}

// Set implements pflag.Value.
func (d day) Set(text string) error {
	if _, err := units.ParseDate(text); err != nil {
		return fault.With(units.DateHint, err)
	}
	*d.value = text
	return nil
}

// Type implements pflag.Value.
func (d day) Type() string { return "date" }
