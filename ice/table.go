package ice

import (
	_ "embed" // tables.csv
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/lumber/measure"
)

//go:embed tables.csv
var tableText string

// A Row is one line of a public table, as printed.
type Row struct {
	Load      string  // what the row is for
	Kind      string  // "person", "small group", "group", "snowmobile", "car", "light truck", "truck", "any", ...
	Mass      float64 // kg, NaN where the row names none
	Thickness float64 // m
	Top       float64 // m, the upper end where a range is printed; otherwise Thickness
	Printed   string  // thickness, or range, with its unit
	Spacing   float64 // m between loads, NaN where the row names none
	Standing  bool    // for a load at rest; otherwise for one that moves
	Off       bool    // stay off at or below this thickness
	White     bool    // the row is for white ice
	Note      string
	Source    *measure.Source
}

// A Table is the list of one public body.
type Table struct {
	Name   string
	Source *measure.Source
	Rows   []Row
}

// Tables returns the public tables, one per body and edition. The rows bear
// the status of their source: some are quoted, some from memory.
func Tables() []Table {
	out := append([]Table(nil), loadTables()...)
	for i := range out {
		out[i].Rows = append([]Row(nil), out[i].Rows...)
	}
	return out
}

// loadTables reads the embedded tables once. They are part of the program, and a test
// reads them: an error would be the library's own.
var loadTables = sync.OnceValue(func() []Table {
	tables, err := readTables(tableText)
	if err != nil {
		panic(err) // unreachable: the rows are embedded, and a test reads them
	}
	return tables
})

// tableUnits are the units of the CSV.
var tableUnits = map[string]float64{
	"in": measure.Inch, "cm": 0.01, "ft": measure.Foot, "m": 1,
	"lb": measure.Pound, "ton": measure.Ton, "kg": 1, "t": measure.Tonne,
}

// readTables parses the CSV; an error names line and column.
func readTables(text string) ([]Table, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("tables.csv: %w", err)
	}
	if len(lines) < 2 {
		return nil, fmt.Errorf("tables.csv: it has no rows")
	}
	var tables []Table
	for n, line := range lines[1:] {
		f := map[string]string{}
		for i, column := range lines[0] {
			f[column] = line[i]
		}
		row, err := readRow(f)
		if err != nil {
			return nil, fmt.Errorf("tables.csv, row %d: %w", n+1, err)
		}
		if k := len(tables); k == 0 || tables[k-1].Name != f["table"] {
			tables = append(tables, Table{Name: f["table"], Source: row.Source})
		}
		t := &tables[len(tables)-1]
		row.Source = t.Source
		t.Rows = append(t.Rows, row)
	}
	return tables, nil
}

// readRow reads one row by column name.
func readRow(f map[string]string) (Row, error) {
	row := Row{
		Load: f["load"], Kind: f["kind"], Note: f["note"], Mass: math.NaN(), Spacing: math.NaN(),
		Standing: f["traffic"] == "standing", Off: f["sense"] == "off", White: f["sense"] == "white",
	}
	src := &measure.Source{Title: f["title"], Edition: f["edition"], Locator: f["locator"]}
	for s := measure.Memory; s <= measure.Exact; s++ {
		if f["status"] == s.String() {
			src.Status = s
		}
	}
	if src.Status == measure.Unstated {
		return row, fmt.Errorf("status %q is none", f["status"])
	}
	row.Source = src
	row.Printed = f["thickness"] + " " + f["unit"]
	if f["top"] != "" {
		row.Printed = f["thickness"] + " to " + f["top"] + " " + f["unit"]
	}
	for _, c := range []struct {
		column, unit string
		into         *float64
	}{
		{"mass", "mass_unit", &row.Mass},
		{"thickness", "unit", &row.Thickness},
		{"top", "unit", &row.Top},
		{"spacing", "spacing_unit", &row.Spacing},
	} {
		text := f[c.column]
		if text == "" {
			continue
		}
		unit, ok := tableUnits[f[c.unit]]
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || !ok || !(x > 0) {
			return row, fmt.Errorf("column %s: %q %q is no quantity", c.column, text, f[c.unit])
		}
		*c.into = x * unit
	}
	if f["unit"] == "cm" { // a division returns the digits exactly
		row.Thickness = math.Round(row.Thickness*1e6) / 1e6
		row.Top = math.Round(row.Top*1e6) / 1e6
	}
	if row.Top == 0 {
		row.Top = row.Thickness
	}
	if !(row.Thickness > 0 && row.Top >= row.Thickness) {
		return row, fmt.Errorf("column thickness: %q to %q is no range", f["thickness"], f["top"])
	}
	return row, nil
}
