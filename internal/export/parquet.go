package export

import (
	"io"

	"github.com/parquet-go/parquet-go"
)

// rowGroup bounds the rows that are held in memory before they are written.
const rowGroup = 50_000

// parquetSink writes a Parquet file. The rows are of type T.
type parquetSink[T any] struct{ w *parquet.GenericWriter[T] }

func newParquet[T any](w io.Writer) (sink, error) {
	return parquetSink[T]{parquet.NewGenericWriter[T](w, parquet.Compression(&parquet.Snappy),
		parquet.MaxRowsPerRowGroup(rowGroup), parquet.CreatedBy("coldfloor", "", ""))}, nil
}

func (s parquetSink[T]) write(row any) error {
	_, err := s.w.Write([]T{*row.(*T)})
	return err
}

func (s parquetSink[T]) close() error { return s.w.Close() }
