package export

import (
	"encoding/binary"
	"math"
	"reflect"
	"time"
)

// Physical types of Parquet.
const (
	parquetBool   = 0
	parquetInt32  = 1
	parquetInt64  = 2
	parquetDouble = 5
	parquetBytes  = 6
)

// parquetColumn holds the values of one column until they are written, in the
// encoding PLAIN.
type parquetColumn struct {
	Column
	physical int
	plain    []byte
	known    []bool // of each row, for a column whose values may be missing
	truths   int    // yes-or-no values so far, eight to a byte
}

func newParquetColumn(c Column) *parquetColumn {
	physical := map[string]int{"yes or no": parquetBool, "date": parquetInt32, "whole number": parquetInt64,
		"moment": parquetInt64, "number": parquetDouble, "text": parquetBytes}
	return &parquetColumn{Column: c, physical: physical[c.Type]}
}

// add appends the value of one row.
func (c *parquetColumn) add(v reflect.Value) {
	if c.Optional {
		c.known = append(c.known, !v.IsNil())
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	switch v := v.Interface().(type) {
	case bool:
		if c.truths%8 == 0 {
			c.plain = append(c.plain, 0)
		}
		if v {
			c.plain[len(c.plain)-1] |= 1 << (c.truths % 8)
		}
		c.truths++
	case Date:
		c.plain = binary.LittleEndian.AppendUint32(c.plain, uint32(v))
	case int64:
		c.plain = binary.LittleEndian.AppendUint64(c.plain, uint64(v))
	case time.Time:
		c.plain = binary.LittleEndian.AppendUint64(c.plain, uint64(v.UnixMilli()))
	case float64:
		c.plain = binary.LittleEndian.AppendUint64(c.plain, math.Float64bits(v))
	case string:
		c.plain = binary.LittleEndian.AppendUint32(c.plain, uint32(len(v)))
		c.plain = append(c.plain, v...)
	}
}

// page returns the column's values as the content of a page: which of them are
// known, a bit each (RLE/bit-packed hybrid, width 1), and then those.
func (c *parquetColumn) page() []byte {
	if !c.Optional {
		return c.plain
	}
	groups := (len(c.known) + 7) / 8
	levels := binary.AppendUvarint(nil, uint64(groups)<<1|1)
	bits := make([]byte, groups)
	for i, known := range c.known {
		if known {
			bits[i/8] |= 1 << (i % 8)
		}
	}
	levels = append(levels, bits...)
	page := binary.LittleEndian.AppendUint32(nil, uint32(len(levels)))
	return append(append(page, levels...), c.plain...)
}

// reset forgets the values.
func (c *parquetColumn) reset() { c.plain, c.known, c.truths = c.plain[:0], c.known[:0], 0 }

// schema writes the column's element of the schema.
func (c *parquetColumn) schema(t *thrift) {
	t.begin()
	defer t.end()
	t.i32(1, int64(c.physical))
	optional := int64(0)
	if c.Optional {
		optional = 1
	}
	t.i32(3, optional)
	t.text(4, c.Name)
	switch c.Type { // the old and the new name of what the bytes mean
	case "text":
		t.i32(6, 0)
		t.structure(10)
		t.structure(1)
		t.end()
		t.end()
	case "date":
		t.i32(6, 6)
		t.structure(10)
		t.structure(6)
		t.end()
		t.end()
	case "moment":
		t.i32(6, 9)
		t.structure(10)
		t.structure(8)
		t.truth(1, true) // in UTC
		t.structure(2)
		t.structure(1) // milliseconds
		t.end()
		t.end()
		t.end()
		t.end()
	}
}
