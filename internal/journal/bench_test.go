package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"testing"
	"time"
)

// manyRuns returns a journal of n runs of the golden file's lines.
func manyRuns(tb testing.TB, n int) []byte {
	var out bytes.Buffer
	text := twoRuns(tb)
	entries, _ := readAll(tb, text)
	for i := range n {
		for _, e := range entries {
			e.Run = fmt.Sprintf("%s%d", e.Run, i)
			write(tb, &out, e.Line)
		}
	}
	return out.Bytes()
}

// BenchmarkAgainstEncodingJSON reads a journal, reads and folds it, and has
// encoding/json read the same bytes into the same structs, in turn. What it
// reports is how fast the first two are, the third being 1.
func BenchmarkAgainstEncodingJSON(b *testing.B) {
	text := manyRuns(b, 500)
	var read, fold, plain time.Duration
	for b.Loop() {
		read += timeOf(func() {
			for _, err := range Read(bytes.NewReader(text)) {
				if err != nil {
					b.Fatal(err)
				}
			}
		})
		fold += timeOf(func() {
			if _, problems, err := foldAll(bytes.NewReader(text)); err != nil || len(problems) > 0 {
				b.Fatal(err, problems)
			}
		})
		plain += timeOf(func() {
			sc := bufio.NewScanner(bytes.NewReader(text))
			sc.Buffer(nil, maxLine)
			for sc.Scan() {
				var l Line
				if err := json.Unmarshal(sc.Bytes(), &l); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.ReportMetric(plain.Seconds()/read.Seconds(), "read/json")
	b.ReportMetric(plain.Seconds()/fold.Seconds(), "fold/json")
}

func timeOf(f func()) time.Duration {
	start := time.Now()
	f()
	return time.Since(start)
}
