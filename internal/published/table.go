package published

import (
	"embed"
	"fmt"
	"strconv"
	"strings"

	"example.org/floewright/internal/table"
	"example.org/floewright/lumber/measure"
)

//go:embed data/*.csv
var data embed.FS

// A row is one line of a table, by column name.
type row map[string]string

// rows reads data/name.csv by column name.
func rows(name string) ([]row, error) { return table.Read[row](data, name) }

// num returns a column as a number.
func (r row) num(column string) (float64, error) {
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		return 0, fmt.Errorf("column %s: %q is no number", column, r[column])
	}
	return x, nil
}

// nums returns several columns as numbers.
func (r row) nums(columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, column := range columns {
		x, err := r.num(column)
		if err != nil {
			return nil, err
		}
		out[i] = x
	}
	return out, nil
}

// status turns the word of a table's status column into a status.
func status(word string) (measure.Status, error) {
	for s := measure.Memory; s <= measure.Exact; s++ {
		if strings.EqualFold(s.String(), word) {
			return s, nil
		}
	}
	return measure.Unstated, fmt.Errorf("status %q is none of the statuses of a source", word)
}
