package moor

import (
	"embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/internal/table"
	"example.org/floewright/lumber/measure"
)

// The tables keep the digits as printed, one status and source a row.
//
//go:embed data/*.csv
var data embed.FS

// readTable reads data/name.csv by column name.
func readTable(name string) ([]map[string]string, error) {
	return table.Read[map[string]string](data, name)
}

// A tabled factor is one of a table: the share of strength an end leaves, or a design factor.
type tabled struct {
	of     string
	factor measure.Factor
}

// A ground is a bottom with the friction of concrete on it, lowest and highest
// of its class; 0 where the source has no row.
type ground struct {
	name          string
	cast, precast [2]float64
}

type tables struct {
	gear    []Gear
	ends    []tabled
	designs []tabled
	bottoms []ground
	clips   []clip
	usual   []usual
}

// A clip is a row of the table of wire rope clips, a usual a figure with its span.
type (
	clip struct {
		size, turnback, torque float64
		number                 int
		source                 *measure.Source
	}
	usual struct {
		name string
		span measure.Range
	}
)

var load = sync.OnceValues(func() (*tables, error) {
	t := &tables{}
	for _, read := range []func(*tables) error{readGear, readFactors, readBottoms, readClips, readUsual} {
		if err := read(t); err != nil {
			return nil, err
		}
	}
	return t, nil
})

// statusOf reads the word of a table's status column.
func statusOf(word string) measure.Status {
	for s := measure.Memory; s <= measure.Exact; s++ {
		if s.String() == word {
			return s
		}
	}
	return measure.Unstated
}

// number reads a cell; an empty one is 0.
func number(row map[string]string, column string) (float64, error) {
	if row[column] == "" {
		return 0, nil
	}
	return strconv.ParseFloat(row[column], 64)
}

var gearUnits = map[string]float64{"lbf": measure.PoundForce, "short ton": 2000 * measure.PoundForce}

func readGear(t *tables) error {
	rows, err := readTable("gear")
	if err != nil {
		return err
	}
	for _, r := range rows {
		unit := gearUnits[r["unit"]]
		breaks, err1 := number(r, "break")
		works, err2 := number(r, "working")
		size, err3 := measure.Length.Parse(r["size"] + " in")
		if err := first(err1, err2, err3); err != nil {
			return fmt.Errorf("gear %s %s: %w", r["kind"], r["size"], err)
		}
		g := Gear{
			Kind: r["kind"], Name: r["size"] + " in " + r["kind"], Size: size,
			Break: breaks * unit, Working: works * unit,
			Source: &measure.Source{Title: r["source"], Locator: r["size"] + " in", Status: statusOf(r["status"])},
		}
		if breaks == 0 {
			// The table prints working loads and the multiple that breaks.
			g.Break = works * unit * breaking(r["kind"])
		}
		t.gear = append(t.gear, g)
	}
	return nil
}

// breaking returns the multiple of its working load at which a piece breaks:
// chain 4 times, grade 43 three times (chain grade table); a shackle 5 times
// (ASME B30.26, from memory).
func breaking(kind string) float64 {
	switch {
	case kind == "chain grade 43":
		return 3
	case strings.HasPrefix(kind, "chain"):
		return 4
	}
	return 5
}

func readFactors(t *tables) error {
	for _, table := range []struct {
		name, column, symbol string
		into                 *[]tabled
	}{{"ends", "share", "end", &t.ends}, {"design", "factor", "1/DF", &t.designs}} {
		rows, err := readTable(table.name)
		if err != nil {
			return err
		}
		for _, r := range rows {
			v, err := number(r, table.column)
			if err != nil {
				return fmt.Errorf("%s %s: %w", table.name, r["name"], err)
			}
			*table.into = append(*table.into, tabled{r["of"], measure.Factor{
				Symbol: table.symbol, Name: r["name"], Value: v, Why: r["printed"],
				Source: &measure.Source{Title: r["source"], Status: statusOf(r["status"])},
			}})
		}
	}
	return nil
}

func readBottoms(t *tables) error {
	rows, err := readTable("bottom")
	if err != nil {
		return err
	}
	for _, r := range rows {
		g := ground{name: r["bottom"]}
		for i, to := range []*float64{&g.cast[0], &g.cast[1], &g.precast[0], &g.precast[1]} {
			v, err := number(r, []string{"cast_low", "cast_high", "precast_low", "precast_high"}[i])
			if err != nil {
				return fmt.Errorf("bottom %s: %w", r["bottom"], err)
			}
			*to = v
		}
		t.bottoms = append(t.bottoms, g)
	}
	return nil
}

func readClips(t *tables) error {
	rows, err := readTable("clips")
	if err != nil {
		return err
	}
	for _, r := range rows {
		size, err := measure.Length.Parse(r["size"] + " in")
		n, err1 := strconv.Atoi(r["number"])
		turnback, err2 := number(r, "turnback")
		torque, err3 := number(r, "torque")
		if err := first(err, err1, err2, err3); err != nil {
			return fmt.Errorf("clips %s: %w", r["size"], err)
		}
		t.clips = append(t.clips, clip{
			size: size, number: n, turnback: turnback * measure.Inch, torque: torque * measure.PoundForce * measure.Foot,
			source: &measure.Source{Title: r["source"], Locator: r["size"] + " in", Status: statusOf(r["status"])},
		})
	}
	return nil
}

func readUsual(t *tables) error {
	rows, err := readTable("usual")
	if err != nil {
		return err
	}
	for _, r := range rows {
		unit, ok := usualUnits[r["unit"]]
		lo, err1 := number(r, "low")
		hi, err2 := number(r, "high")
		if err := first(err1, err2); err != nil || !ok {
			return fmt.Errorf("usual %s in %q: %w", r["name"], r["unit"], err)
		}
		span := measure.Range{
			Kind: unit.kind, Lo: lo * unit.si, Hi: hi * unit.si,
			Source: &measure.Source{Title: r["source"], Locator: r["locator"], Status: statusOf(r["status"])},
		}
		if r["low"] == "" {
			span.Lo = math.Inf(-1)
		}
		if r["high"] == "" {
			span.Hi = math.Inf(1)
		}
		t.usual = append(t.usual, usual{r["name"], span})
	}
	return nil
}
