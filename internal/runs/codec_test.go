package runs

import (
	"coldfloor/internal/compact"

	"math"
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/journal"
)

// anyLine draws a line with any of its parts, sensible or not: the codec has no
// opinion.
var anyLine = rapid.Custom(func(t *rapid.T) journal.Line {
	l := journal.Line{V: journal.Version, Run: "R"}
	draw(t, reflect.ValueOf(&l).Elem())
	l.V, l.Run = journal.Version, "R"
	if l.Started != nil {
		l.Started.Text = ""
	}
	return l
})

// draw fills v with drawn values.
func draw(t *rapid.T, v reflect.Value) {
	if _, ok := v.Interface().(time.Time); ok {
		sec := rapid.Int64Range(-1e9, 4e9).Draw(t, "seconds")
		nsec := rapid.Int64Range(0, 999_999_999).Draw(t, "nanoseconds")
		zone := time.FixedZone("", rapid.IntRange(-14*4, 14*4).Draw(t, "zone")*900)
		v.Set(reflect.ValueOf(time.Unix(sec, nsec).In(zone)))
		return
	}
	switch v.Kind() {
	case reflect.Int:
		v.SetInt(rapid.Int64().Draw(t, "int"))
	case reflect.Uint64:
		v.SetUint(rapid.Uint64().Draw(t, "uint"))
	case reflect.Float64:
		v.SetFloat(rapid.OneOf(rapid.Float64(), rapid.Map(rapid.IntRange(0, 1e7), func(ms int) float64 { return float64(ms) / 1000 })).Draw(t, "float"))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(t, "bool"))
	case reflect.String:
		v.SetString(rapid.String().Draw(t, "string"))
	case reflect.Pointer:
		if rapid.Bool().Draw(t, "there") {
			v.Set(reflect.New(v.Type().Elem()))
			draw(t, v.Elem())
		}
	case reflect.Slice:
		if n := rapid.IntRange(-1, 3).Draw(t, "length"); n >= 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				draw(t, v.Index(i))
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).Tag.Get("json") != "-" { // what is not in the file, the fold fills in
				draw(t, v.Field(i))
			}
		}
	default:
		t.Fatalf("no way to draw a %v", v.Type())
	}
}

// sameTimes makes equal moments of equal offset compare equal.
func sameTimes(l *journal.Line) {
	fix := func(p *time.Time) {
		_, offset := p.Zone()
		*p = p.In(fixedZones(offset))
	}
	fix(&l.At)
	if l.Correct != nil && l.Correct.At != nil {
		fix(l.Correct.At)
	}
}

var zones = map[int]*time.Location{}

func fixedZones(offset int) *time.Location {
	if zones[offset] == nil {
		zones[offset] = time.FixedZone("", offset)
	}
	return zones[offset]
}

// Every field of a line, also one that is added later, survives the codec.
func TestCodecKeepsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := anyLine.Draw(t, "line")
		var w codec
		w.line(&want)
		r := codec{Coder: compact.Coder{Reading: true, Buf: w.Buf}}
		got := journal.Line{Run: "R"}
		r.line(&got)
		if r.Err != nil || len(r.Buf) > 0 {
			t.Fatalf("error %v, %d bytes left", r.Err, len(r.Buf))
		}
		sameTimes(&want)
		sameTimes(&got)
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("got %+v\nwant %+v", got, want)
		}
	})
}

func TestCodecCutShort(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLine.Draw(t, "line")
		var w codec
		w.line(&l)
		r := codec{Coder: compact.Coder{Reading: true, Buf: w.Buf[:rapid.IntRange(0, len(w.Buf)-1).Draw(t, "cut")]}}
		var got journal.Line
		if r.line(&got); r.Err == nil {
			t.Fatal("no error")
		}
	})
}

func TestCodecOddFloats(t *testing.T) {
	for _, want := range []float64{0, math.Copysign(0, -1), math.Inf(1), math.MaxFloat64, 1e-300, 0.1 + 0.2, 75, 75.001} {
		var w codec
		w.Float(&want)
		r := codec{Coder: compact.Coder{Reading: true, Buf: w.Buf}}
		var got float64
		if r.Float(&got); got != want {
			t.Errorf("%v came back as %v", want, got)
		}
	}
}
