package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

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
		return fmt.Errorf("write %s", strings.Join(c.words, ", or "))
	}
	*c.value = text
	return nil
}

// Type implements pflag.Value.
func (c choice) Type() string { return "word" }

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
		return fmt.Errorf("%w; %s", err, units.DateHint)
	}
	*d.value = text
	return nil
}

// Type implements pflag.Value.
func (d day) Type() string { return "date" }
