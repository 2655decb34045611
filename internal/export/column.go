package export

import (
	"reflect"
	"strconv"
	"strings"
	"time"
)

// Column is one column of a table.
type Column struct {
	Name     string
	Type     string // text, whole number, number, yes or no, date, or moment
	Optional bool   // the value may be missing
	Free     bool   // text that somebody typed; see Options.Raw
	Meaning  string
}

// Columns returns the columns of a table, in order.
func Columns(t Table) []Column {
	var all []Column
	typ := rowTypes[t]
	for i := range typ.NumField() {
		f := typ.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("parquet"), ",")
		kind := f.Type
		if kind.Kind() == reflect.Pointer {
			kind = kind.Elem()
		}
		all = append(all, Column{Name: name, Type: typeOf(kind), Optional: f.Type.Kind() == reflect.Pointer,
			Free: f.Tag.Get("free") != "", Meaning: f.Tag.Get("doc")})
	}
	return all
}

var rowTypes = map[Table]reflect.Type{
	Sessions: reflect.TypeFor[SessionRow](),
	Sets:     reflect.TypeFor[SetRow](),
	Rests:    reflect.TypeFor[RestRow](),
}

// typeOf returns what a column of a Go type holds, in words.
func typeOf(t reflect.Type) string {
	switch {
	case t == reflect.TypeFor[Date]():
		return "date"
	case t == reflect.TypeFor[time.Time]():
		return "moment"
	case t.Kind() == reflect.Bool:
		return "yes or no"
	case t.Kind() == reflect.Int64:
		return "whole number"
	case t.Kind() == reflect.Float64:
		return "number"
	}
	return "text"
}

// cell is one value of a row: nil if it is missing, else a string, bool,
// int64 or float64. Dates and moments are text in the forms of ISO 8601.
type cell any

// cells returns the values of a row.
func cells(row any) []cell {
	v := reflect.ValueOf(row).Elem()
	all := make([]cell, v.NumField())
	for i := range all {
		f := v.Field(i)
		if f.Kind() == reflect.Pointer {
			if f.IsNil() {
				continue
			}
			f = f.Elem()
		}
		switch v := f.Interface().(type) {
		case Date:
			all[i] = v.String()
		case time.Time:
			all[i] = moment(v)
		default:
			all[i] = v
		}
	}
	return all
}

// moment writes a moment to the millisecond, with its offset from UTC.
func moment(t time.Time) string { return t.Format("2006-01-02T15:04:05.000Z07:00") }

// cellText returns a cell as plain text, empty if it is missing.
func cellText(c cell) string {
	switch v := c.(type) {
	case string:
		return v
	case bool:
		return strconv.FormatBool(v)
	case int64:
		return strconv.FormatInt(v, 10)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return ""
}
