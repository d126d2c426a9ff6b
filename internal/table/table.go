// Package table reads the tables that packages embed: CSV files whose first line
// names the columns and whose lines that begin with # are remarks.
package table

import (
	"encoding/csv"
	"fmt"
	"io/fs"
)

// Read returns the rows of data/name.csv, each by column name.
func Read[Row ~map[string]string](files fs.FS, name string) ([]Row, error) {
	f, err := files.Open("data/" + name + ".csv")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(lines) == 0 {
		return nil, fmt.Errorf("%s: no line names the columns", name)
	}
	out := make([]Row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		row := make(Row, len(line))
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		out = append(out, row)
	}
	return out, nil
}
