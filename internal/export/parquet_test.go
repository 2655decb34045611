package export

import (
	"bytes"
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/parquet-go/parquet-go"
	"pgregory.net/rapid"
)

// What this package writes another implementation of the format reads back,
// whatever is missing and however many row groups there are.
func TestAnotherReaderReadsParquet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var rows []SetRow
		for i := range rapid.IntRange(0, 40).Draw(t, "rows") {
			r := SetRow{Player: rapid.String().Draw(t, "player"), RunID: fmt.Sprint(i), Date: Date(rapid.Int32().Draw(t, "date")),
				Block: rapid.Int64().Draw(t, "block"), ByHand: rapid.Bool().Draw(t, "hand"), Paced: rapid.Bool().Draw(t, "paced"),
				PlannedS: rapid.Float64().Draw(t, "planned")}
			if rapid.Bool().Draw(t, "titled") {
				s := rapid.String().Draw(t, "title")
				r.BlockTitle = &s
			}
			if rapid.Bool().Draw(t, "dated") {
				at := time.UnixMilli(rapid.Int64Range(-1e12, 9e12).Draw(t, "at")).UTC() // the reader counts nanoseconds
				r.EndedAt = &at
			}
			rows = append(rows, r)
		}
		holdParquet(t, rows, rapid.IntRange(1, 50).Draw(t, "group"))
	})
}

func TestParquetGroups(t *testing.T) {
	rows := make([]SetRow, rowGroup+7)
	for i := range rows {
		n := int64(i)
		rows[i] = SetRow{RunID: fmt.Sprint(i), Reps: n, TakenS: math.Sqrt(float64(i)), Easier: i%3 == 0}
		if i%5 > 0 {
			rows[i].Contacts = &n
		}
	}
	holdParquet(t, rows, 0)
}

// holdParquet writes rows, ending a row group after so many, and holds what
// the other reader gives against them.
func holdParquet(t interface {
	Helper()
	Fatalf(string, ...any)
}, rows []SetRow, group int) {
	t.Helper()
	var file bytes.Buffer
	s, err := newParquet(&file, Columns(Sets))
	if err != nil {
		t.Fatalf("%v", err)
	}
	for i := range rows {
		if err := s.write(&rows[i]); err != nil {
			t.Fatalf("%v", err)
		}
		if group > 0 && i%group == group-1 {
			if err := s.(*parquetSink).flush(); err != nil {
				t.Fatalf("%v", err)
			}
		}
	}
	if err := s.close(); err != nil {
		t.Fatalf("%v", err)
	}
	back, err := parquet.Read[SetRow](bytes.NewReader(file.Bytes()), int64(file.Len()))
	if err != nil || len(back) != len(rows) {
		t.Fatalf("%d of %d rows are read back: %v", len(back), len(rows), err)
	}
	for i := range rows {
		if back[i].EndedAt != nil {
			*back[i].EndedAt = back[i].EndedAt.UTC()
		}
		if got, want := fmt.Sprint(cells(&back[i])), fmt.Sprint(cells(&rows[i])); got != want {
			t.Fatalf("row %d is read back as %s, want %s", i, got, want)
		}
	}
}
