package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

const fastenPackage = "lumber/fasten"

// fastenChecks gathers the checks of package fasten, one function per kind.
func fastenChecks() ([]Check, error) {
	var all []Check
	for _, set := range []func() ([]Check, error){fastenTables, fastenBearing, fastenWorked, fastenModes, fastenMore} {
		checks, err := set()
		if err != nil {
			return nil, fmt.Errorf("fasten: %w", err)
		}
		all = append(all, checks...)
	}
	return all, nil
}

// connectionTable returns a table of the standard, as far as it was seen.
func connectionTable(table, seen string, st measure.Status) measure.Source {
	s := measure.Source{
		Title: "National Design Specification for Wood Construction (American Wood Council)", Edition: "2018",
		Locator: "Table " + table, Status: st,
	}
	if seen != "" {
		s.Locator += ", " + seen
	}
	return s
}

// fastenTables holds printed cells of the standard's tables.
func fastenTables() ([]Check, error) {
	table, err := rows("conn_tables")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		step, err := r.num("step")
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: fastenPackage, Source: connectionTable(r["table"], r["seen"], st), Quantity: r["case"],
			Printed: r["printed"], Step: step, Unit: "lbf",
		}
		cell := readCell(r["case"])
		compute := cell.lateral
		switch {
		case strings.HasPrefix(r["table"], "12.2F"):
			compute = cell.pullThrough
		case strings.HasPrefix(r["table"], "12.2"):
			compute = cell.withdrawal
			c.Unit = "lbf/in"
		case strings.HasPrefix(r["table"], "11.3.6"):
			compute = func() (float64, error) { return cell.group(r["table"] == "11.3.6C") }
			c.Unit = ""
		case strings.HasPrefix(r["table"], "12F"), strings.HasPrefix(r["table"], "12G"):
			cell.double = true
			compute = cell.lateral
		}
		c.Compute = compute
		out = append(out, c)
	}
	return out, nil
}

// A cell is the case of a printed cell: its words and its numbers in inches, psi
// and degrees.
type cell struct {
	row    row
	text   string
	double bool
}

func readCell(text string) *cell {
	c := &cell{row: row{}, text: text}
	for _, word := range strings.Fields(text) {
		if key, value, ok := strings.Cut(word, "="); ok {
			c.row[key] = value
		}
	}
	return c
}

// has reports whether the case has a word.
func (c *cell) has(word string) bool { return strings.Contains(c.text, word) }

// wood returns wood of a specific gravity and nothing else known.
func wood(g float64) lumber.Grade { return lumber.Grade{G: lumber.Value{Printed: g, Unit: 1}} }

// fastener returns the fastener of the case, without a length.
func (c *cell) fastener() (fasten.Fastener, error) {
	if c.has("No.") {
		for _, w := range strings.Fields(c.text) {
			if strings.HasPrefix(w, "No.") {
				return fasten.Lookup(w + " wood screw")
			}
		}
	}
	if size, _, ok := strings.Cut(c.text, " com ts"); ok { // no diameter is given
		return fasten.Lookup(size + " common nail")
	}
	f := fasten.Fastener{Kind: fasten.Nail}
	switch {
	case c.has("bolt"):
		f.Kind = fasten.Bolt
	case c.has("lag"):
		f.Kind = fasten.LagScrew
	case c.has("ring"):
		f.Kind = fasten.RingNail
	}
	d, err := c.row.num("D")
	f.Diameter = d * measure.Inch
	return f, err
}

// joint returns the joint of a lateral cell.
func (c *cell) joint() (fasten.Joint, error) {
	f, err := c.fastener()
	if err != nil {
		return fasten.Joint{}, err
	}
	x, err := c.row.nums("G", "ts")
	if err != nil {
		return fasten.Joint{}, err
	}
	main := fasten.Piece{Grade: wood(x[0]), Thickness: 12 * measure.Inch}
	side := fasten.Piece{Grade: wood(x[0]), Thickness: x[1] * measure.Inch}
	j := fasten.Joint{Fastener: f, Main: main, Side: side, Double: c.double, Shank: true}
	switch {
	case c.has("A36"), c.row["theta_s"] == "steel":
		j.Side.Material = fasten.Plate
	case c.has("A653"):
		j.Side.Material = fasten.Sheet
	}
	for _, a := range []struct {
		key string
		to  *float64
	}{{"theta_m", &j.Main.Angle}, {"theta_s", &j.Side.Angle}} {
		if v := c.row[a.key]; v == "" || v == "steel" {
			continue
		}
		degrees, err := c.row.num(a.key)
		if err != nil {
			return j, err
		}
		*a.to = degrees * math.Pi / 180
	}
	switch f.Kind {
	case fasten.Bolt:
		tm, err := c.row.num("tm")
		j.Main.Thickness = tm * measure.Inch
		return j, err
	case fasten.LagScrew: // 8D without the point
		all := fasten.Fasteners()
		for _, listed := range all {
			if listed.Kind == f.Kind && math.Abs(listed.Diameter-f.Diameter) < 1e-9 {
				j.Fastener.Length = x[1]*measure.Inch + 8*f.Diameter + listed.Tip
			}
		}
	default: // 10D with the point
		j.Fastener.Length = x[1]*measure.Inch + 10*f.Diameter
	}
	return j, nil
}

func (c *cell) lateral() (float64, error) {
	j, err := c.joint()
	if err != nil {
		return 0, err
	}
	y, err := j.Yield()
	return y.Z / measure.PoundForce, err
}

func (c *cell) withdrawal() (float64, error) {
	f, err := c.fastener()
	if err != nil {
		return 0, err
	}
	g, err := c.row.num("G")
	if err != nil {
		return 0, err
	}
	w, err := f.Withdrawal(g)
	return w * measure.Inch / measure.PoundForce, err
}

func (c *cell) pullThrough() (float64, error) {
	x, err := c.row.nums("DH", "t", "G")
	if err != nil {
		return 0, err
	}
	w, err := fasten.PullThrough(x[0]*measure.Inch, x[1]*measure.Inch, x[2])
	return w / measure.PoundForce, err
}

func (c *cell) group(metal bool) (float64, error) {
	x, err := c.row.nums("n", "D", "s", "E", "Am", "As")
	if err != nil {
		return 0, err
	}
	side := x[3]
	if metal {
		side = 30e6
	}
	f, err := fasten.GroupAction(int(x[0]), x[1]*measure.Inch, x[2]*measure.Inch, x[3]*x[4]*measure.PoundForce, side*x[5]*measure.PoundForce, metal)
	return f.Value, err
}
