package fasten

import (
	"embed"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/internal/table"
	"example.org/floewright/lumber/measure"
)

// The tables are kept as printed, with the status of each row.
//
//go:embed data/*.csv
var data embed.FS

type line map[string]string

// lines reads data/name.csv by column name.
func lines(name string) ([]line, error) { return table.Read[line](data, name) }

// num returns a column as a number, 0 where it is empty. The files are part of
// the build and a test reads every cell.
func (l line) num(column string) float64 {
	x, err := strconv.ParseFloat(l[column], 64)
	if err != nil {
		return 0
	}
	return x
}

// status returns the status that the row's word names.
func (l line) status() (measure.Status, error) {
	for s := measure.Memory; s <= measure.Exact; s++ {
		if s.String() == l["status"] {
			return s, nil
		}
	}
	return measure.Unstated, fmt.Errorf("status %q is none of the statuses of a source", l["status"])
}

// A part is what goes with a bolt of a diameter, in inches.
type part struct {
	d, pitch, nut, locknut, washer, thick float64
	source                                *measure.Source
}

type tables struct {
	fasteners []Fastener
	keys      []string // of the fasteners, as normalized
	classes   []line
	parts     []part
	finishes  []Finish
	spelled   []string // of the finishes
}

// loaded reads the embedded files once. An error would be a fault of the build;
// every call returns it.
var loaded = sync.OnceValues(load)

// embedded returns the tables, which lie in the binary. That they do not load is a fault
// of the build, which TestTablesLoad would find.
func embedded() *tables {
	t, err := loaded()
	if err != nil {
		panic(err) // unreachable: the files are part of the build, and a test loads them
	}
	return t
}

func load() (*tables, error) {
	t := &tables{}
	rows, err := lines("fasteners")
	if err != nil {
		return nil, err
	}
	for _, r := range rows {
		st, err := r.status()
		if err != nil {
			return nil, err
		}
		locator := "Appendix L, " + r["table"] + "; Table I1"
		f := Fastener{
			Kind: kinds[r["kind"]], Name: r["size"] + " " + r["kind"], Source: nds(locator, st),
			Diameter: r.num("D") * measure.Inch, Root: r.num("root") * measure.Inch, Length: r.num("length") * measure.Inch,
			Head: r.num("head") * measure.Inch, Tip: r.num("tip") * measure.Inch, Yield: r.num("Fyb") * measure.PSI,
		}
		if f.Kind == 0 {
			return nil, fmt.Errorf("fasteners: unknown kind %q", r["kind"])
		}
		t.fasteners = append(t.fasteners, f)
		t.keys = append(t.keys, normal(f.Name))
	}
	if t.classes, err = lines("yield"); err != nil {
		return nil, err
	}
	if rows, err = lines("hardware"); err != nil {
		return nil, err
	}
	for _, r := range rows {
		st, err := r.status()
		if err != nil {
			return nil, err
		}
		t.parts = append(t.parts, part{
			d: r.num("D"), pitch: 1 / r.num("threads"), nut: r.num("nut"), locknut: r.num("locknut"),
			washer: r.num("washer"), thick: r.num("thick"),
			source: &measure.Source{Title: "ASME B18.2.2, B18.21.1 and B1.1", Locator: "nuts, washers and threads", Status: st},
		})
	}
	return t, t.loadFinishes()
}

var kinds = map[string]Kind{
	"bolt": Bolt, "lag screw": LagScrew, "wood screw": WoodScrew,
	"common nail": Nail, "box nail": Nail, "sinker nail": Nail, "hanger nail": Nail,
}

// like returns the table's fastener of a kind and nominal diameter, in inches,
// nil if there is none.
func (t *tables) like(k Kind, d float64) *Fastener {
	for i := range t.fasteners {
		if f := &t.fasteners[i]; f.Kind == k && math.Abs(f.Diameter/measure.Inch-d) < hair {
			return f
		}
	}
	return nil
}

// class returns the bending yield strength, psi, of a class of fastener, 0 where
// Appendix I has none.
func (t *tables) class(k Kind, hardened bool, d float64) float64 {
	name := k.String()
	if k.nail() || k == WoodScrew {
		name = "nail"
		if hardened {
			name = "hardened nail"
		}
	}
	for _, c := range t.classes {
		from, to := c.num("from"), c.num("to")
		if c["fastener"] != name || d > to+hair {
			continue
		}
		if d > from+hair || !(k.nail() || k == WoodScrew) && d >= from-hair {
			return c.num("Fyb")
		}
	}
	return 0
}

// part returns what goes with a bolt or lag screw of a diameter, in inches.
func (t *tables) part(d float64) (part, error) {
	for _, p := range t.parts {
		if math.Abs(p.d-d) < hair {
			return p, nil
		}
	}
	var known []string
	for _, p := range t.parts {
		known = append(known, measure.FeetInches(p.d*measure.Inch, 16))
	}
	return part{}, &measure.Error{
		Field: "Diameter", Text: measure.FeetInches(d*measure.Inch, 64), Class: measure.ErrName, Want: strings.Join(known, ", "),
	}
}

// Fasteners returns every row of the tables of fasteners, in their order: what
// [Lookup] chooses from. NDS 2018, Appendix L.
func Fasteners() []Fastener { return slices.Clone(embedded().fasteners) }

// normal reduces a name to what tells it from others.
func normal(s string) string {
	s = strings.ToLower(s)
	s = strings.NewReplacer("#", "no", "number", "no", "no.", "no", "screws", "screw", "nails", "nail", "bolts", "bolt", "lags", "lag", "inches", "", "inch", "").Replace(s)
	var b strings.Builder
	for _, word := range strings.Fields(s) {
		if word != "in" && word != "in." {
			b.WriteString(word)
		}
	}
	s = strings.NewReplacer(`"`, "", "_", "", ",", "", ".", "").Replace(b.String())
	for _, alias := range [][2]string{{"commonnail", "common"}, {"boxnail", "box"}, {"sinkernail", "sinker"}, {"hangernail", "hanger"}, {"lagscrew", "lag"}, {"lagbolt", "lag"}, {"woodscrew", "screw"}} {
		s = strings.ReplaceAll(s, alias[0], alias[1])
	}
	return s
}

// Lookup returns a fastener by the name it has in the trade, as printed in NDS
// 2018, Appendix L: "1/2 bolt", "3/8 lag screw", "No.10 wood screw", "16d common
// nail", and with a length in inches "1/2 x 4 lag screw". It forgives spelling
// ("#10 screw", "1/2 in. bolt"). An unknown name is a [*measure.Error] of class
// [measure.ErrName] that lists the candidates.
func Lookup(name string) (Fastener, error) {
	t, err := loaded()
	if err != nil {
		return Fastener{}, err
	}
	if len(name) <= 100 {
		if f, ok := t.find(name); ok {
			return f, nil
		}
		if size, rest, ok := strings.Cut(strings.ToLower(name), "x"); ok {
			length, kind, _ := strings.Cut(strings.TrimSpace(rest), " ")
			l, err := measure.Length.Parse(strings.Trim(length, `"`) + " in")
			if f, ok := t.find(size + " " + kind); ok && err == nil && l > 0 && l <= 1 && !f.Kind.nail() {
				f.Length = l
				return f, nil
			}
		}
	}
	if len(name) > 100 {
		name = name[:100]
	}
	names := make([]string, len(t.fasteners))
	for i, f := range t.fasteners {
		names[i] = f.Name
	}
	return Fastener{}, &measure.Error{Field: "fastener", Text: name, Class: measure.ErrName, Want: strings.Join(names, ", ")}
}

func (t *tables) find(name string) (Fastener, bool) {
	key := normal(name)
	for i, k := range t.keys {
		if k == key {
			return t.fasteners[i], true
		}
	}
	return Fastener{}, false
}
