//go:build e2e

package calendar

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"coldfloor/internal/text"
)

// seen is an event as another program reads it.
type seen struct{ UID, Start, Duration, Summary, Description, Status, Sequence, Alarm string }

const withPython = `
import json, sys
from icalendar import Calendar
out = []
for e in Calendar.from_ical(open(sys.argv[1], 'rb').read()).walk('VEVENT'):
    alarms = [a for a in e.subcomponents if a.name == 'VALARM']
    out.append(dict(UID=str(e['UID']), Start=e['DTSTART'].dt.isoformat(),
        Duration=str(int(e['DURATION'].dt.total_seconds())) if 'DURATION' in e else '',
        Summary=str(e['SUMMARY']), Description=str(e['DESCRIPTION']), Status=str(e.get('STATUS', '')),
        Sequence=str(e['SEQUENCE']), Alarm=str(int(alarms[0]['TRIGGER'].dt.total_seconds())) if alarms else ''))
print(json.dumps(out))
`

const withJavaScript = `
import fs from 'fs'
import ICAL from 'ical.js'
const all = new ICAL.Component(ICAL.parse(fs.readFileSync(process.argv[2], 'utf8'))).getAllSubcomponents('vevent')
console.log(JSON.stringify(all.map(c => {
  const e = new ICAL.Event(c), alarm = c.getFirstSubcomponent('valarm'), length = c.getFirstPropertyValue('duration')
  return {UID: e.uid, Start: e.startDate.toString(), Duration: length ? String(length.toSeconds()) : '', Summary: e.summary,
    Description: e.description, Status: c.getFirstPropertyValue('status') || '', Sequence: String(e.sequence),
    Alarm: alarm ? String(alarm.getFirstPropertyValue('trigger').toSeconds()) : ''}
})))
`

// TestReaders has a calendar read by two libraries that know nothing of this
// one: icalendar of Python (Debian's python3-icalendar) and ical.js (npm).
func TestReaders(t *testing.T) {
	p := planOf(t, `Sechs Wochen; "Übergang", \ zum ersten Punktspiel 跳箱跳箱跳箱跳箱跳箱跳箱跳箱`, `days: {mon: {session: a.yaml, at: "18:30"}, thu: a.yaml}
away: [2026-12-17]
matches: ["2026-12-20 14:00"]
move: {2026-12-10: 2026-12-11}
`)
	dir := t.TempDir()
	file := filepath.Join(dir, "plan.ics")
	o := Options{Revision: 3, Alarm: 30 * time.Minute, Changed: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC), Language: &text.English}
	if err := WriteFile(file, p, o, false); err != nil {
		t.Fatal(err)
	}
	var want []seen
	for _, e := range events(p, o) {
		s := seen{UID: e.uid, Start: e.date.String(), Summary: e.summary, Description: e.description, Status: "CONFIRMED", Sequence: "3"}
		if e.at != nil {
			s.Start += "T" + e.at.String() + ":00"
			s.Alarm = "-1800"
		}
		if e.at != nil && e.length > 0 {
			s.Duration = "13"
		}
		if e.cancelled {
			s.Status, s.Alarm = "CANCELLED", ""
		}
		want = append(want, s)
	}
	t.Run("icalendar", func(t *testing.T) {
		compare(t, output(t, dir, "/usr/bin/python3", "-c", withPython, file), want)
	})
	t.Run("ical.js", func(t *testing.T) {
		output(t, dir, "npm", "install", "--silent", "--no-audit", "--no-fund", "ical.js@2.2.1")
		if err := os.WriteFile(filepath.Join(dir, "read.mjs"), []byte(withJavaScript), 0o644); err != nil {
			t.Fatal(err)
		}
		compare(t, output(t, dir, "node", "read.mjs", file), want)
	})
}

func compare(t *testing.T, out []byte, want []seen) {
	t.Helper()
	var got []seen
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatalf("%v in %s", err, out)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("read as\n%+v\nwant\n%+v", got, want)
	}
}

// output runs a program, or skips if it is not there.
func output(t *testing.T, dir, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skip(err)
	}
	c := exec.Command(name, args...)
	c.Dir = dir
	out, err := c.Output()
	if err != nil {
		var stderr []byte
		if e, ok := err.(*exec.ExitError); ok {
			stderr = e.Stderr
		}
		t.Fatalf("%s: %v\n%s", name, err, stderr)
	}
	return out
}
