package track

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/csv"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/mewkiz/flac"
	"pgregory.net/rapid"

	"coldfloor/internal/plan"
	"coldfloor/sessions/sessionstest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// mixdown returns the samples of a track worked out the plain way: silence, and
// each clip added at its sample.
func mixdown(p *plan.Plan, o sound.Options) []int32 {
	o.AllPaced = true
	sum := make([]float64, trackLength(p, o))
	for c := range sound.Timeline(p, sound.Beginning(p), o) {
		at := sound.Position(c.At)
		for i, v := range c.Clip.Samples() {
			sum[at+i] += float64(v)
		}
	}
	out := make([]int32, len(sum))
	for i, v := range sum {
		out[i] = pcm(v)
	}
	return out
}

// writtenTrack returns a track as a file.
func writtenTrack(t testing.TB, f Format, p *plan.Plan, o sound.Options) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "track."+string(f))
	if err := (Files{Track: file}).Write(context.Background(), p, o, nil); err != nil {
		t.Fatal(err)
	}
	return file
}

// decodeFLAC decodes with the library's own reader, which also checks each
// frame's checksum.
func decodeFLAC(t testing.TB, file string) (out []int32, s *flac.Stream) {
	t.Helper()
	s, err := flac.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for {
		f, err := s.ParseNext()
		if errors.Is(err, io.EOF) {
			return out, s
		}
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, f.Subframes[0].Samples...)
	}
}

func TestFLACHoldsEveryCueAtItsSample(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	for _, o := range []sound.Options{{Pips: 3}, {Pips: 1, Clicks: true}} {
		got, s := decodeFLAC(t, writtenTrack(t, FLAC, p, o))
		if !slices.Equal(got, mixdown(p, o)) {
			t.Error("the decoded samples are not the clips at their samples")
		}
		if s.Info.NSamples != uint64(len(got)) || s.Info.BlockSizeMin != trackBlock || s.Info.BlockSizeMax != trackBlock {
			t.Errorf("the head says %+v", s.Info)
		}
	}
}

func TestTracksOfRandomSessions(t *testing.T) {
	o := sound.Options{Pips: 3, Clicks: true}
	for seed := range 10 {
		p := plan.Of(rapid.Custom(sessionstest.Draw).Example(seed))
		if p.Total > 10*time.Minute {
			continue
		}
		if got, _ := decodeFLAC(t, writtenTrack(t, FLAC, p, o)); !slices.Equal(got, mixdown(p, o)) {
			t.Errorf("seed %d: the decoded samples are not the clips at their samples", seed)
		}
	}
}

func TestWAVIsLaidOutAsRIFF(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	file, err := os.ReadFile(writtenTrack(t, WAV, p, sound.Options{Pips: 3}))
	if err != nil {
		t.Fatal(err)
	}
	le := binary.LittleEndian
	if string(file[:4]) != "RIFF" || int(le.Uint32(file[4:])) != len(file)-8 || string(file[8:12]) != "WAVE" {
		t.Fatalf("head % x", file[:12])
	}
	chunks := map[string][]byte{}
	for rest := file[12:]; len(rest) > 0; {
		n := int(le.Uint32(rest[4:]))
		chunks[string(rest[:4])] = rest[8 : 8+n]
		rest = rest[8+n+n%2:]
	}
	want := mixdown(p, sound.Options{Pips: 3})
	data := chunks["data"]
	if len(data) != 2*len(want) {
		t.Fatalf("%d bytes of data, want %d", len(data), 2*len(want))
	}
	for i, v := range want {
		if int32(int16(le.Uint16(data[2*i:]))) != v {
			t.Fatalf("sample %d is not %d", i, v)
		}
	}
	if cue := chunks["cue "]; le.Uint32(cue) != 1 || int(le.Uint32(cue[8:])) != 5*44100 || int(le.Uint32(cue[24:])) != 5*44100 {
		t.Errorf("cue chunk % x", cue)
	}
	if !bytes.Contains(chunks["LIST"], []byte("labl\x07\x00\x00\x00\x01\x00\x00\x00Up\x00")) {
		t.Errorf("labels %q", chunks["LIST"])
	}
}

func TestCueListIsTheTimeline(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	var b bytes.Buffer
	if err := WriteCueList(&b, p, sound.Options{Pips: 3}); err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(b.Bytes(), []byte("time_s,sample,name\r\n2,88200,get ready\r\n")) {
		t.Errorf("begins %q", b.Bytes()[:60])
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	i := 1
	for c := range sound.Timeline(p, sound.Beginning(p), sound.Options{Pips: 3}) {
		if want := []string{seconds(c.At), strconv.Itoa(sound.Position(c.At)), c.Clip.Name}; !slices.Equal(rows[i], want) {
			t.Errorf("row %d is %q, want %q", i, rows[i], want)
		}
		i++
	}
	if i != len(rows) {
		t.Errorf("%d rows, want %d", len(rows), i)
	}
}

func TestNothingIsLeftBehind(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	dir := t.TempDir()
	there := filepath.Join(dir, "there.flac")
	if err := os.WriteFile(there, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	done, cancel := context.WithCancel(context.Background())
	cancel()
	bg := context.Background()
	for name, err := range map[string]error{
		"interrupted":        Files{Track: filepath.Join(dir, "a.flac"), Cues: filepath.Join(dir, "a.csv")}.Write(done, p, sound.Options{}, nil),
		"a file there":       Files{Track: there}.Write(bg, p, sound.Options{}, nil),
		"a list there":       Files{Track: filepath.Join(dir, "b.wav"), Cues: there}.Write(bg, p, sound.Options{}, nil),
		"a folder there":     Files{Track: filepath.Join(dir, "c.wav"), Cues: dir}.Write(bg, p, sound.Options{}, nil),
		"no such folder":     Files{Track: filepath.Join(dir, "no", "d.wav")}.Write(bg, p, sound.Options{}, nil),
		"no such format":     Files{Track: filepath.Join(dir, "e.ogg")}.Write(bg, p, sound.Options{}, nil),
		"a write that fails": Files{Track: filepath.Join(dir, "f.flac")}.Write(failing{bg}, p, sound.Options{}, nil),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 || entries[0].Name() != "there.flac" {
		t.Errorf("left behind: %v", entries)
	}
	if b, _ := os.ReadFile(there); string(b) != "mine" {
		t.Errorf("the file that was there holds %q", b)
	}
	if err := (Files{Track: there, Force: true}).Write(bg, p, sound.Options{}, nil); err != nil {
		t.Error(err)
	}
}

// failing is a context that is done at the second look.
type failing struct{ context.Context }

var looks int

func (failing) Err() error {
	if looks++; looks > 1 {
		return context.DeadlineExceeded
	}
	return nil
}

func TestATrackNeverWaitsForAKey(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	got, _ := decodeFLAC(t, writtenTrack(t, FLAC, p, sound.Options{ByHand: true}))
	if len(got) != trackLength(p, sound.Options{AllPaced: true}) {
		t.Errorf("%d samples", len(got))
	}
}

func TestTrackTellsHowFarItIs(t *testing.T) {
	p := soundtest.Planned(t, soundtest.Superset)
	last := time.Duration(-1)
	err := Write(context.Background(), &discard{}, WAV, p, sound.Options{}, func(written, all time.Duration) {
		if written <= last || written > all || all < p.Total {
			t.Errorf("told %v of %v after %v", written, all, last)
		}
		last = written
	})
	if err != nil || last < 0 {
		t.Error(err, last)
	}
}

// discard is a file that is thrown away.
type discard struct{}

func (*discard) Write(b []byte) (int, error)                  { return len(b), nil }
func (*discard) Seek(offset int64, whence int) (int64, error) { return 0, nil }

func TestFormatOf(t *testing.T) {
	for file, want := range map[string]Format{"a.flac": FLAC, "b.c.WAV": WAV, "d.mp3": "", "flac": "", "": ""} {
		if got, ok := FormatOf(file); ok != (want != "") || ok && got != want {
			t.Errorf("%q is %q, %v", file, got, ok)
		}
	}
}

func BenchmarkTrack(b *testing.B) {
	for _, minutes := range []int{10, 40} {
		p := soundtest.Planned(b, "blocks: [{title: A, rounds: "+strconv.Itoa(minutes)+", rest: 40s, exercises: [{name: Hops, reps: 10}]}]\n")
		for _, f := range []Format{FLAC, WAV} {
			b.Run(strconv.Itoa(minutes)+"min-"+string(f), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if err := Write(context.Background(), &discard{}, f, p, sound.Options{Pips: 3}, nil); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(p.Total.Seconds()*float64(b.N)/b.Elapsed().Seconds(), "×realtime")
			})
		}
	}
}

func BenchmarkTimeline(b *testing.B) {
	p := soundtest.Planned(b, "blocks: [{title: A, rounds: 300, rest: 40s, exercises: [{name: Hops, reps: 10}]}]\n")
	b.ReportAllocs()
	for b.Loop() {
		for range sound.Timeline(p, sound.Beginning(p), sound.Options{Pips: 3, Clicks: true}) {
		}
	}
}
