package export

import "encoding/binary"

// thrift writes structs in the compact protocol of Apache Thrift, which
// Parquet's page heads and footer are in (thrift-compact-protocol.md). Fields
// are written in rising order of their numbers.
type thrift struct {
	buf  []byte
	last []int // the field written last, of each struct that is open
}

// The types of fields and of the items of lists.
const (
	thriftTrue   = 1
	thriftFalse  = 2
	thriftI32    = 5
	thriftI64    = 6
	thriftBinary = 8
	thriftList   = 9
	thriftStruct = 12
)

// begin opens a struct, and end closes it.
func (t *thrift) begin() { t.last = append(t.last, 0) }

func (t *thrift) end() {
	t.buf = append(t.buf, 0)
	t.last = t.last[:len(t.last)-1]
}

// field writes the head of a field.
func (t *thrift) field(n, kind int) {
	last := &t.last[len(t.last)-1]
	t.buf = append(t.buf, byte((n-*last)<<4|kind)) // no two of ours lie more than 15 apart
	*last = n
}

// number writes a whole number, zigzag-coded.
func (t *thrift) number(v int64) { t.buf = binary.AppendVarint(t.buf, v) }

func (t *thrift) i32(n int, v int64) {
	t.field(n, thriftI32)
	t.number(v)
}

func (t *thrift) i64(n int, v int64) {
	t.field(n, thriftI64)
	t.number(v)
}

func (t *thrift) truth(n int, v bool) {
	kind := thriftFalse
	if v {
		kind = thriftTrue
	}
	t.field(n, kind)
}

func (t *thrift) text(n int, s string) {
	t.field(n, thriftBinary)
	t.bytes(s)
}

func (t *thrift) bytes(s string) {
	t.buf = binary.AppendUvarint(t.buf, uint64(len(s)))
	t.buf = append(t.buf, s...)
}

// list writes the head of a field that is a list of so many items.
func (t *thrift) list(n, kind, items int) {
	t.field(n, thriftList)
	if items < 15 {
		t.buf = append(t.buf, byte(items<<4|kind))
		return
	}
	t.buf = append(t.buf, byte(0xf0|kind))
	t.buf = binary.AppendUvarint(t.buf, uint64(items))
}

// structure opens a field that is a struct.
func (t *thrift) structure(n int) {
	t.field(n, thriftStruct)
	t.begin()
}
