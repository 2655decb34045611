//go:build unix

package main

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"strings"
	"time"
)

// screen is what the console's cells hold.
type screen struct {
	rows, cols int
	chars      []uint32 // as they were written: /dev/vcsu1
	drawn      []uint16 // places in the font, with colours: /dev/vcsa1
}

// screen reads the cells.
func (m *machine) screen() (s screen, err error) {
	cells, err := m.device("vcsa1")
	if err != nil {
		return s, err
	}
	chars, err := m.device("vcsu1")
	if err != nil {
		return s, err
	}
	if len(cells) < 4 || len(cells) < 4+2*int(cells[0])*int(cells[1]) || len(chars) < 4*int(cells[0])*int(cells[1]) {
		return s, fmt.Errorf("%d bytes of cells and %d of characters", len(cells), len(chars))
	}
	s.rows, s.cols = int(cells[0]), int(cells[1])
	for i := range s.rows * s.cols {
		s.chars = append(s.chars, binary.LittleEndian.Uint32(chars[4*i:]))
		s.drawn = append(s.drawn, binary.LittleEndian.Uint16(cells[4+2*i:]))
	}
	return s, nil
}

// device reads a device of the console.
func (m *machine) device(name string) ([]byte, error) {
	text, err := m.run("base64 /dev/" + name)
	if err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(strings.Join(strings.Fields(text), ""))
}

// text returns the characters, line by line.
func (s screen) text() string {
	var b strings.Builder
	for i, c := range s.chars {
		b.WriteRune(rune(max(c, ' ')))
		if i%s.cols == s.cols-1 {
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// place returns where in the first 256 of the font a cell's character is drawn.
func (s screen) place(i int) int { return int(s.drawn[i] & 0xff) }

// learn finds out how a character is drawn that the font lacks, by one that no font
// has. The characters are only kept from when they are first read.
func (m *machine) learn() error {
	if _, err := m.screen(); err != nil {
		return err
	}
	if _, err := m.run(`printf '\033[H\033[J\356\200\200' >/dev/tty1`); err != nil {
		return err
	}
	s, err := m.screen()
	if err != nil {
		return err
	}
	m.lacking = s.place(0)
	_, err = m.run(`printf '\033[H\033[J# ' >/dev/tty1`)
	return err
}

// lookalikes are drawn in some fonts as a character that is lacking is.
const lookalikes = "♦◆◈■?\ufffd"

// picture takes a picture, and reports what the font lacks.
func (m *machine) picture(path string) error {
	time.Sleep(200 * time.Millisecond) // for QEMU to draw what the cells hold
	data, err := m.dump()
	if err != nil {
		return err
	}
	s, err := m.screen()
	if err != nil {
		return err
	}
	if err := os.WriteFile(path+".txt", []byte(s.text()), 0o644); err != nil {
		return err
	}
	if err := writePNG(path+".png", data); err != nil {
		return err
	}
	fmt.Println(path + ".png")
	for i, c := range s.chars {
		if s.place(i) == m.lacking && c >= 0x80 && !strings.ContainsRune(lookalikes, rune(c)) {
			return fmt.Errorf("line %d, column %d: the font has no %q", i/s.cols+1, i%s.cols+1, rune(c))
		}
	}
	return nil
}

// writePNG writes a picture that came in QEMU's form, PPM of three bytes a pixel.
func writePNG(path string, ppm []byte) error {
	var w, h, most int
	if _, err := fmt.Fscanf(bytes.NewReader(ppm), "P6\n%d %d\n%d\n", &w, &h, &most); err != nil {
		return err
	}
	pixels := ppm[len(ppm)-3*w*h:]
	picture := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range w * h {
		picture.Set(i%w, i/w, color.RGBA{pixels[3*i], pixels[3*i+1], pixels[3*i+2], 0xff})
	}
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return png.Encode(f, picture)
}
