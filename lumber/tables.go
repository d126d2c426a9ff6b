package lumber

import (
	"embed"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/internal/table"
	"example.org/floewright/lumber/measure"
)

// The tables are kept one file per printed table, digits as printed, with the
// status of each row.
//
//go:embed data/*.csv
var data embed.FS

// readTable reads data/name.csv by column name.
func readTable(name string) ([]map[string]string, error) {
	return table.Read[map[string]string](data, name)
}

// A kindOfWood is one line of the table of species groups.
type kindOfWood struct {
	name     string
	g, light Value
	spelled  []string
}

// tables holds everything read from the embedded files.
type tables struct {
	species []kindOfWood
	grades  []Grade           // in the order of the files
	keys    map[string]string // grade names in their one form
}

// loaded reads the embedded files once. An error would be a fault of the build;
// every look-up returns it.
var loaded = sync.OnceValues(load)

// embedded returns a table that lies in the binary. That one does not load is a fault of
// the build, which TestTablesLoad would find.
func embedded[T any](t T, err error) T {
	if err != nil {
		panic(err) // unreachable: the files are part of the build, and a test loads them
	}
	return t
}

func load() (*tables, error) {
	t := &tables{keys: map[string]string{}}
	lines, err := readTable("species")
	if err != nil {
		return nil, err
	}
	for _, r := range lines {
		st, err := statusOf(r["status"])
		if err != nil {
			return nil, err
		}
		k := kindOfWood{name: r["species"], spelled: strings.Fields(r["spelled"])}
		if k.g, err = gravity(r["G"], r["species"], st); err != nil {
			return nil, err
		}
		if r["light"] != "" {
			if k.light, err = gravity(r["light"], r["species"], st); err != nil {
				return nil, err
			}
		}
		t.species = append(t.species, k)
	}
	for _, name := range []string{"4A", "4B", "4D"} {
		lines, err := readTable("values_" + strings.ToLower(name))
		if err != nil {
			return nil, err
		}
		for _, r := range lines {
			g, err := t.grade(name, r)
			if err != nil {
				return nil, fmt.Errorf("table %s: %w", name, err)
			}
			t.grades = append(t.grades, g)
			t.keys[g.Name] = gradeName(g.Name)
		}
	}
	return t, nil
}

// gravity returns a printed specific gravity.
func gravity(text, species string, st measure.Status) (Value, error) {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return Value{}, err
	}
	return Value{Printed: x, Unit: 1, Source: at("Table 12.3.3A, "+species, st)}, nil
}

// grade turns a line of a table of design values into a Grade.
func (t *tables) grade(table string, r map[string]string) (Grade, error) {
	g := Grade{Species: r["species"], Name: r["grade"], Table: table}
	if c := r["class"]; c != "" {
		g.Table += " " + c
	}
	if w := r["widest"]; w != "" {
		n, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return g, err
		}
		s, ok := side(widths, n)
		if !ok {
			return g, fmt.Errorf("width %q", w)
		}
		// Table 4B's widest class serves beyond it as well, with a size factor.
		if !(table == "4B" && s.n == 12) {
			g.Widest = widestOf(s)
		}
	}
	st, err := statusOf(r["status"])
	if err != nil {
		return g, err
	}
	stE, err := statusOf(r["status_E"])
	if err != nil {
		return g, err
	}
	place := "Table " + g.Table + ", " + g.Species + ", " + g.Name
	if w := r["widest"]; w != "" {
		place += ", to " + w + " in. wide"
	}
	if r["remark"] != "" {
		place += " (" + r["remark"] + ")"
	}
	src, srcE := supplement(place, st), supplement(place, stE)
	for _, c := range []struct {
		column string
		to     *Value
		src    *measure.Source
	}{
		{"Fb", &g.Fb, src},
		{"Ft", &g.Ft, src},
		{"Fv", &g.Fv, src},
		{"FcPerp", &g.FcPerp, src},
		{"Fc", &g.Fc, src},
		{"E", &g.E, srcE},
		{"Emin", &g.Emin, srcE},
	} {
		x, err := strconv.ParseFloat(r[c.column], 64)
		if err != nil {
			return g, fmt.Errorf("%s: column %s: %w", place, c.column, err)
		}
		*c.to = psi(x, c.src)
	}
	for _, k := range t.species {
		if k.name == g.Species {
			g.G, g.Light = k.g, k.light
			return g, nil
		}
	}
	return g, fmt.Errorf("species %q has no specific gravity", g.Species)
}

func statusOf(word string) (measure.Status, error) {
	for s := measure.Memory; s <= measure.Exact; s++ {
		if s.String() == word {
			return s, nil
		}
	}
	return measure.Unstated, fmt.Errorf("status %q", word)
}
