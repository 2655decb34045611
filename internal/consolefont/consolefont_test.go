package consolefont

import (
	"os"
	"testing"
)

func TestOf(t *testing.T) {
	file, err := os.Create(t.TempDir() + "/output")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	linux := func(string) string { return "linux" }
	for _, stream := range []any{file, nil, t} {
		if r := Of(stream, linux); r != nil {
			t.Errorf("%T is a console of %d characters", stream, len(r))
		}
	}
}

func TestRepertoire(t *testing.T) {
	if r := repertoire(nil); r != nil {
		t.Errorf("a table that is not told gives %v", r)
	}
	r := repertoire([]pair{{'↑', 0x18}, {'▲', 0x18}, {'█', 0xdb}})
	if !r.Has("↑█") || !r.Has("▲") || r.Has("↑▲") || r.Has("▀") {
		t.Errorf("%v", r)
	}
}
