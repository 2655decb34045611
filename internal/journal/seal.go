package journal

import (
	"bytes"
	"encoding/hex"
	"encoding/json"
	"errors"
	"hash/crc32"
)

// castagnoli is the polynomial of CRC-32C (RFC 3720, section 12.1).
var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// The seal of a line is its last key: "crc", and the CRC-32C of the bytes
// before the comma in front of it, in eight lower-case hex digits.
const (
	sealKey    = `,"crc":"`
	sealDigits = 8
	sealLength = len(sealKey) + sealDigits + len(`"}`)
)

// errSeal says that a line is not what was written.
var errSeal = errors.New("is damaged: its checksum does not fit")

// Encode returns a line as it is written, sealed, with its line feed.
func Encode(l *Line) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(l); err != nil {
		return nil, err
	}
	return append(seal(bytes.TrimSuffix(b.Bytes(), []byte("\n"))), '\n'), nil
}

// seal returns an object, which must hold a key, with its seal.
func seal(object []byte) []byte {
	body := bytes.TrimSuffix(object, []byte("}"))
	return append(appendSeal(body, body), `"}`...)
}

// appendSeal appends the seal's key and digits for body.
func appendSeal(to, body []byte) []byte {
	sum := crc32.Checksum(body, castagnoli)
	to = append(to, sealKey...)
	return hex.AppendEncode(to, []byte{byte(sum >> 24), byte(sum >> 16), byte(sum >> 8), byte(sum)})
}

// sealed reports whether a record ends with a seal, and whether the seal fits
// what stands before it.
func sealed(record []byte) (has, fits bool) {
	at := len(record) - sealLength
	if at < 0 || string(record[at:at+len(sealKey)]) != sealKey || string(record[len(record)-2:]) != `"}` {
		return false, false
	}
	var want [len(sealKey) + sealDigits]byte
	got := appendSeal(want[:0], record[:at])
	return true, bytes.Equal(got, record[at:len(record)-2])
}
