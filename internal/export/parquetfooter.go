package export

// footer returns what the file holds and where.
func (s *parquetSink) footer() []byte {
	var t thrift
	t.begin()
	t.i32(1, 1) // version of the format
	t.list(2, thriftStruct, 1+len(s.columns))
	t.begin() // the root of the schema
	t.text(4, "row")
	t.i32(5, int64(len(s.columns)))
	t.end()
	for _, c := range s.columns {
		c.schema(&t)
	}
	t.i64(3, s.all)
	t.list(4, thriftStruct, len(s.groups))
	for _, g := range s.groups {
		s.group(&t, g)
	}
	t.text(6, "coldfloor")
	t.end()
	return t.buf
}

// group writes the entry of one row group.
func (s *parquetSink) group(t *thrift, g parquetGroup) {
	t.begin()
	defer t.end()
	t.list(1, thriftStruct, len(g.chunks))
	size := int64(0)
	for i, chunk := range g.chunks {
		c := s.columns[i]
		t.begin()
		t.i64(2, 0) // no entry of its own elsewhere
		t.structure(3)
		t.i32(1, int64(c.physical))
		t.list(2, thriftI32, 2)
		t.number(0) // PLAIN
		t.number(3) // RLE
		t.list(3, thriftBinary, 1)
		t.bytes(c.Name)
		t.i32(4, 2) // GZIP
		t.i64(5, g.rows)
		t.i64(6, chunk.plain)
		t.i64(7, chunk.packed)
		t.i64(9, chunk.at)
		t.end()
		t.end()
		size += chunk.plain
	}
	t.i64(2, size)
	t.i64(3, g.rows)
}
