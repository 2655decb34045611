package handout

import (
	"context"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/sound"
	"coldfloor/sound/track"
)

// trackStore keeps the tracks that are asked for, so that players who do the same
// session wait for it once.
type trackStore struct {
	folder string
	known  map[string]*trackOf // by the session and what of a player is heard in it
}

// trackOf is a track that may be made.
type trackOf struct {
	plan  *plan.Plan
	heard Heard
	print print
	path  string // of it, once it is made
}

// sound puts a track of each session. One that stands there as it would be made
// is not made.
func (w *writer) sound(ctx context.Context, f *files, p *settings.Player, days []day) error {
	if w.Heard == nil {
		return nil
	}
	for _, d := range days {
		if err := ctx.Err(); err != nil {
			return err
		}
		t, err := w.track(ctx, d, p)
		if err != nil {
			return err
		}
		name := d.FileName() + ".flac"
		if was, err := os.ReadFile(filepath.Join(f.folder, name)); err == nil {
			if p, ok := markOf(was); ok && p == t.print {
				f.given.Kept++
				f.told()
				continue
			}
		}
		content, err := t.make(ctx, w.tracks.folder)
		if err != nil {
			return err
		}
		if err := f.put(name, content); err != nil {
			return err
		}
	}
	return nil
}

// track returns the track of a session for a player, not made yet.
func (w *writer) track(ctx context.Context, d day, p *settings.Player) (*trackOf, error) {
	key := fmt.Sprintf("%s %v\n%s", p.Language, p.Clicks, d.session.Source)
	if t, ok := w.tracks.known[key]; ok {
		return t, nil
	}
	heard, err := w.Heard(ctx, d.plan, p)
	if err != nil {
		return nil, err
	}
	t := &trackOf{plan: text.In(p.Language).Headed(d.plan), heard: heard}
	if t.print, err = printOf(ctx, t.plan, heard); err != nil {
		return nil, err
	}
	w.tracks.known[key] = t
	return t, nil
}

// make returns the track, and makes it in a folder for what passes if it was not
// made yet.
func (t *trackOf) make(ctx context.Context, folder string) ([]byte, error) {
	if t.path == "" {
		path := filepath.Join(folder, hex.EncodeToString(t.print[:8])+".flac")
		heard := t.heard.Cues
		if t.heard.Speak != nil {
			if err := t.heard.Speak(ctx, &heard); err != nil {
				return nil, err
			}
		}
		if err := write(ctx, path, t.plan, heard); err != nil {
			return nil, err
		}
		t.path = path
	}
	content, err := os.ReadFile(t.path)
	if err != nil {
		return nil, err
	}
	return marked(content, t.print), nil
}

func write(ctx context.Context, path string, p *plan.Plan, heard sound.Options) (err error) {
	out, err := os.Create(path)
	if err != nil {
		return err
	}
	defer func() {
		if e := out.Close(); err == nil {
			err = e
		}
	}()
	return track.Write(ctx, out, track.FLAC, p, heard, nil)
}
