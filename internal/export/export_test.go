package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/parquet-go/parquet-go"
	"pgregory.net/rapid"

	"coldfloor/internal/journal"
	"coldfloor/internal/journalgen"
	"coldfloor/internal/runs"
)

var monday = time.Date(2026, 1, 5, 23, 30, 0, 0, time.FixedZone("", -5*3600))

// pile returns the made-up journal of two players, and what it holds.
func pile(t testing.TB) (*runs.Pile, journalgen.Truth) {
	t.Helper()
	dir := t.TempDir()
	truth, err := journalgen.Folder(dir, 2, 8, monday)
	if err != nil {
		t.Fatal(err)
	}
	p, err := runs.Gather([]string{dir}, runs.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { p.Close() })
	return p, truth
}

// exported returns the tables of a pile.
func exported(t testing.TB, p *runs.Pile, f Format) map[Table]*bytes.Buffer {
	t.Helper()
	bufs, out := map[Table]*bytes.Buffer{}, map[Table]io.Writer{}
	for _, table := range Tables {
		bufs[table] = &bytes.Buffer{}
		out[table] = bufs[table]
	}
	e, err := New(Options{Format: f}, out)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(e.All(p), e.Close()); err != nil {
		t.Fatal(err)
	}
	return bufs
}

// records returns the rows of CSV, without the header.
func records(t testing.TB, r io.Reader) [][]string {
	t.Helper()
	all, err := csv.NewReader(r).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func TestCounts(t *testing.T) {
	p, truth := pile(t)
	tables := exported(t, p, CSV)
	for table, want := range map[Table]int{Sessions: truth.Sessions, Sets: truth.Sets, Rests: truth.Rests} {
		if n := len(records(t, tables[table])); n != want {
			t.Errorf("%d rows of %s, want %d", n, table, want)
		}
	}
}

// All formats hold the same values.
func TestFormatsAgree(t *testing.T) {
	p, _ := pile(t)
	asCSV, asJSON, asParquet := exported(t, p, CSV), exported(t, p, JSONL), exported(t, p, Parquet)
	for _, table := range Tables {
		rows := records(t, asCSV[table])
		columns := Columns(table)
		dec := json.NewDecoder(asJSON[table])
		dec.UseNumber()
		for _, row := range rows {
			var object map[string]any
			if err := dec.Decode(&object); err != nil {
				t.Fatal(err)
			}
			for i, c := range columns {
				if got := jsonText(object[c.Name]); got != row[i] {
					t.Fatalf("%s of %s is %q in JSON and %q in CSV", c.Name, table, got, row[i])
				}
			}
		}
		for i, got := range parquetCells(t, table, asParquet[table].Bytes()) {
			for j, c := range columns {
				want := rows[i][j]
				if c.Type == "moment" { // Parquet knows no offset
					at, err := time.Parse(time.RFC3339, want)
					if err != nil {
						t.Fatal(err)
					}
					want = moment(at.UTC())
				}
				if text := cellText(got[j]); text != want {
					t.Fatalf("%s of %s is %q in Parquet and %q in CSV", c.Name, table, text, want)
				}
			}
		}
	}
}

func jsonText(v any) string {
	switch v := v.(type) {
	case json.Number:
		return v.String()
	case bool:
		return cellText(v)
	case string:
		return v
	}
	return ""
}

// parquetCells reads a Parquet table back.
func parquetCells(t *testing.T, table Table, file []byte) [][]cell {
	t.Helper()
	switch table {
	case Sessions:
		return readBack[SessionRow](t, file)
	case Sets:
		return readBack[SetRow](t, file)
	}
	return readBack[RestRow](t, file)
}

func readBack[T any](t *testing.T, file []byte) [][]cell {
	t.Helper()
	rows, err := parquet.Read[T](bytes.NewReader(file), int64(len(file)))
	if err != nil {
		t.Fatal(err)
	}
	var all [][]cell
	for i := range rows {
		// What Parquet holds of time comes back in the machine's zone.
		v := reflect.ValueOf(&rows[i]).Elem()
		for j := range v.NumField() {
			if at, ok := v.Field(j).Interface().(time.Time); ok {
				v.Field(j).Set(reflect.ValueOf(at.UTC()))
			}
		}
		all = append(all, cells(&rows[i]))
	}
	return all
}

func TestOrderAndDates(t *testing.T) {
	p, _ := pile(t)
	rows := records(t, exported(t, p, CSV)[Sessions])
	var keys []string
	for _, r := range rows {
		keys = append(keys, r[0]+r[2])
	}
	if !slices.IsSorted(keys) {
		t.Errorf("the sessions come in the order %q", keys)
	}
	if rows[0][4-1] != rows[0][2][:10] || !strings.HasSuffix(rows[0][2], "-05:00") {
		t.Errorf("began %s, dated %s", rows[0][2], rows[0][3])
	}
}

// RFC 4180: a header, lines that end in CRLF, cells that need it in quotes.
func TestCSVIsRFC4180(t *testing.T) {
	note := "two\nlines, \"quoted\"\r\nand on"
	r := runs.Run{Run: &journal.Run{ID: "R", Start: monday, State: journal.Complete, Said: []journal.Statement{{Note: note}}}, Player: "Ana"}
	var buf bytes.Buffer
	e, err := New(Options{Format: CSV}, map[Table]io.Writer{Sessions: &buf})
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(e.Add(r), e.Close()); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(buf.String(), "player,run_id,started_at,date,") || !strings.HasSuffix(buf.String(), "\r\n") {
		t.Errorf("wrote %q", buf.String())
	}
	if want := `,"` + strings.ReplaceAll(note, `"`, `""`) + `",`; !strings.Contains(buf.String(), want) {
		t.Errorf("no %q in %q", want, buf.String())
	}
}

// Whatever a player types comes back, and none of it is a formula.
func TestGuard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`['=+@\t\r\n -]{0,4}[a-z]{0,3}`)).Draw(t, "text")
		guarded := Guard(text)
		if back := strings.TrimPrefix(guarded, "'"); back != text {
			t.Fatalf("%q became %q and came back as %q", text, guarded, back)
		}
		if guarded != "" && strings.ContainsAny(strings.TrimLeft(guarded, " ")[:min(1, len(strings.TrimLeft(guarded, " ")))], "=+-@\t\r") {
			t.Fatalf("%q became %q", text, guarded)
		}
	})
	for text, want := range map[string]string{
		"": "", "left knee": "left knee", "=1+1": "'=1+1", "-3 kg": "'-3 kg", "@home": "'@home", " =1": "' =1",
		"'quoted": "''quoted", "＝1": "'＝1", "\t=1": "'\t=1", "6 - 7": "6 - 7",
	} {
		if got := Guard(text); got != want {
			t.Errorf("Guard(%q) = %q, want %q", text, got, want)
		}
	}
}

// Figures are never guarded: a rest cut short is a number.
func TestFiguresAreNotGuarded(t *testing.T) {
	r := runs.Run{Run: &journal.Run{ID: "R", Start: monday, State: journal.Complete, Rests: []journal.Rest{{PrescribedS: 75, TakenS: 70.5, End: "skip"}}}}
	var guarded, raw bytes.Buffer
	for buf, o := range map[*bytes.Buffer]Options{&guarded: {Format: CSV}, &raw: {Format: CSV, Raw: true}} {
		r.Player = "=cmd()"
		e, err := New(o, map[Table]io.Writer{Rests: buf})
		if err != nil {
			t.Fatal(err)
		}
		if err := errors.Join(e.Add(r), e.Close()); err != nil {
			t.Fatal(err)
		}
	}
	if got := records(t, &guarded)[0]; got[0] != "'=cmd()" || got[10] != "-4.5" || got[12] != "early" {
		t.Errorf("guarded: %q", got)
	}
	if got := records(t, &raw)[0]; got[0] != "=cmd()" {
		t.Errorf("raw: %q", got)
	}
}

// A column of seconds says so in its name, and every column is documented once.
func TestColumnsAreDocumented(t *testing.T) {
	for _, table := range Tables {
		seen := map[string]bool{}
		for _, c := range Columns(table) {
			if c.Name == "" || c.Meaning == "" || seen[c.Name] {
				t.Errorf("%s: column %+v", table, c)
			}
			seen[c.Name] = true
			if c.Type == "number" && !strings.HasSuffix(c.Name, "_s") && c.Name != "rpe" && c.Name != "load_au" {
				t.Errorf("%s: %s has no unit in its name", table, c.Name)
			}
			if c.Free && c.Type != "text" {
				t.Errorf("%s: %s is typed, and no text", table, c.Name)
			}
		}
	}
}

func TestLeftOut(t *testing.T) {
	withdrawn := runs.Run{Run: &journal.Run{ID: "A", Withdrawn: true}}
	rehearsal := runs.Run{Run: &journal.Run{ID: "B", Started: &journal.Started{Speed: 60}}}
	var buf bytes.Buffer
	e, err := New(Options{Format: JSONL}, map[Table]io.Writer{Sessions: &buf})
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(e.Add(withdrawn), e.Add(rehearsal), e.Close()); err != nil || buf.Len() > 0 || e.Withdrawn != 1 || e.Rehearsals != 1 {
		t.Errorf("wrote %q, %v, %+v", buf.String(), err, e)
	}
}
