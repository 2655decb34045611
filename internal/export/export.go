package export

import (
	"errors"
	"fmt"
	"io"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
)

// Table is one of the tables.
type Table string

// The tables.
const (
	Sessions Table = "sessions"
	Sets     Table = "sets"
	Rests    Table = "rests"
)

// Tables is every table, in the order in which they are documented.
var Tables = []Table{Sessions, Sets, Rests}

// Format is a file format. It is also the ending of the files' names.
type Format string

// The formats.
const (
	CSV     Format = "csv"     // RFC 4180
	JSONL   Format = "jsonl"   // JSON Lines
	Parquet Format = "parquet" // Apache Parquet
)

// Options says how to export.
type Options struct {
	Format    Format
	Raw       bool             // CSV: leave free text as it is, even if a spreadsheet would run it; see Guard
	Tolerance review.Tolerance // of the rests' verdicts; zero: review.DefaultTolerance
}

// sink is a table being written. It takes rows of one type.
type sink interface {
	write(row any) error // a pointer to the row
	close() error
}

// Exporter writes tables. Close it.
type Exporter struct {
	opts  Options
	sinks map[Table]sink

	Sessions   int // written
	Withdrawn  int // sessions left out: taken back by the player
	Rehearsals int // sessions left out: sped up, they trained nobody
	Empty      int // sessions left out: begun, and nothing was done or said in them
	Differ     int // lines that stood twice and differed; the first counted
}

// New returns an Exporter of the tables that have a writer.
func New(o Options, out map[Table]io.Writer) (*Exporter, error) {
	if o.Tolerance == (review.Tolerance{}) {
		o.Tolerance = review.DefaultTolerance
	}
	e := &Exporter{opts: o, sinks: map[Table]sink{}}
	for table, w := range out {
		s, err := o.open(table, w)
		if err != nil {
			return nil, err
		}
		e.sinks[table] = s
	}
	return e, nil
}

// open returns the sink of a table.
func (o Options) open(t Table, w io.Writer) (sink, error) {
	switch o.Format {
	case CSV:
		return newCSV(w, Columns(t), o.Raw)
	case JSONL:
		return newJSONL(w, Columns(t))
	case Parquet:
		return newParquet(w, Columns(t))
	}
	return nil, fmt.Errorf("no table %q in format %q", t, o.Format)
}

// Add writes a run's rows.
func (e *Exporter) Add(r runs.Run) error {
	e.Differ += r.Differ
	switch r.Fate() {
	case journal.Deleted:
		e.Withdrawn++
		return nil
	case journal.Rehearsed:
		e.Rehearsals++
		return nil
	case journal.Empty:
		e.Empty++
		return nil
	}
	e.Sessions++
	if s := e.sinks[Sessions]; s != nil {
		if err := s.write(sessionRow(r, e.opts.Tolerance)); err != nil {
			return err
		}
	}
	if s := e.sinks[Sets]; s != nil {
		if err := writeAll(s, setRows(r)); err != nil {
			return err
		}
	}
	if s := e.sinks[Rests]; s != nil {
		return writeAll(s, restRows(r, e.opts.Tolerance))
	}
	return nil
}

func writeAll[T any](s sink, rows []*T) error {
	for _, row := range rows {
		if err := s.write(row); err != nil {
			return err
		}
	}
	return nil
}

// Close ends the tables; their writers stay open.
func (e *Exporter) Close() error {
	var err error
	for _, s := range e.sinks {
		err = errors.Join(err, s.close())
	}
	return err
}
