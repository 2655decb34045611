package handout

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/sound"
	"coldfloor/sound/track"
)

// trackStore keeps the tracks that were made, so that players who do the same
// session wait for it once.
type trackStore struct {
	folder string
	made   map[string]string // path by what the track holds
}

// sound puts a track of each session.
func (w *writer) sound(ctx context.Context, f *files, p *settings.Player, days []day) error {
	if w.Heard == nil {
		return nil
	}
	for _, d := range days {
		if err := ctx.Err(); err != nil {
			return err
		}
		path, err := w.track(ctx, d, p)
		if err != nil {
			return err
		}
		if err := f.copyTrack(d.FileName()+".flac", path); err != nil {
			return err
		}
	}
	return nil
}

// track returns a file with the track of a session for a player.
func (w *writer) track(ctx context.Context, d day, p *settings.Player) (string, error) {
	key := p.Language + "\n" + string(d.session.Source)
	if path, ok := w.tracks.made[key]; ok {
		return path, nil
	}
	heard, err := w.Heard(ctx, d.plan, p)
	if err != nil {
		return "", err
	}
	path := filepath.Join(w.tracks.folder, nameOf(key)+".flac")
	if err := write(ctx, path, text.In(p.Language).Headed(d.plan), heard); err != nil {
		return "", err
	}
	w.tracks.made[key] = path
	return path, nil
}

func nameOf(key string) string {
	sum := sha256.Sum256([]byte(key))
	return hex.EncodeToString(sum[:8])
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
