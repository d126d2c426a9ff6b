package fasten_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// The equations once more, written straight from the standard in inches and
// pounds, each with a mistake that can be switched on: the printed cells must
// tell the mistake from the rule.
type mutant struct {
	name    string
	fe      func(exact float64) float64
	noTheta bool // no Kθ
	shank   bool // lag screws with their shank's diameter
	feRoot  bool // bearing of lag screws at the root's diameter
	noSmall bool // no Kθ on lag screws whose root is below 1/4 in
	kd      func(d float64) float64
	rd2     float64 // of mode II
	k3      func(re float64) float64
	k2      func(re float64) float64 // under the root
	over2   func(re float64) float64 // below the line of mode IIIm
}

func rule(name string) mutant {
	return mutant{
		name: name,
		fe:   func(x float64) float64 { return 50 * math.Floor(x/50+0.5) },
		kd: func(d float64) float64 {
			if d <= 0.17 {
				return 2.2
			}
			return 10*d + 0.5
		},
		rd2:   3.6,
		k3:    func(re float64) float64 { return 2 + re },
		k2:    func(re float64) float64 { return 1 + 2*re },
		over2: func(re float64) float64 { return 1 + 2*re },
	}
}

// A pin is one lateral case.
type pin struct {
	lag, screw     bool
	d, root, fyb   float64
	lm, ls, g      float64
	thetaM, thetaS float64 // degrees
	steel          float64 // Fe of a steel side, 0 for wood
	mainFe, sideFe float64 // given outright
	double         bool
	only           string // one mode alone
}

func (m mutant) z(p pin) float64 {
	d, feD := p.d, p.d
	if (p.lag || p.screw) && !(m.shank && p.lag) {
		d = p.root
	}
	if m.feRoot && p.lag {
		feD = p.root
	}
	bearing := func(deg float64) float64 {
		if feD < 0.25 {
			return m.fe(16600 * math.Pow(p.g, 1.84))
		}
		if deg == 90 {
			return m.fe(6100 * math.Pow(p.g, 1.45) / math.Sqrt(feD))
		}
		return m.fe(11200 * p.g)
	}
	fem, fes, theta := bearing(p.thetaM), bearing(p.thetaS), math.Max(p.thetaM, p.thetaS)
	if p.steel > 0 {
		fes, theta = p.steel, p.thetaM
	}
	if p.mainFe > 0 {
		fem, fes = p.mainFe, p.sideFe
	}
	kt := 1 + 0.25*theta/90
	if m.noTheta {
		kt = 1
	}
	r1, r2, r3 := 4*kt, m.rd2*kt, 3.2*kt
	if d < 0.25 {
		kd := m.kd(d)
		if p.d >= 0.25 && !m.noSmall {
			kd *= kt
		}
		r1, r2, r3 = kd, kd, kd
	}
	re, rt := fem/fes, p.lm/p.ls
	k1 := (math.Sqrt(re+2*re*re*(1+rt+rt*rt)+rt*rt*re*re*re) - re*(1+rt)) / (1 + re)
	k2 := -1 + math.Sqrt(2*(1+re)+2*p.fyb*m.k2(re)*d*d/(3*fem*p.lm*p.lm))
	k3 := -1 + math.Sqrt(2*(1+re)/re+2*p.fyb*m.k3(re)*d*d/(3*fem*p.ls*p.ls))
	modes := []struct {
		name          string
		single, twice float64
	}{
		{"Im", d * p.lm * fem / r1, d * p.lm * fem / r1},
		{"Is", d * p.ls * fes / r1, 2 * d * p.ls * fes / r1},
		{"II", k1 * d * p.ls * fes / r2, math.Inf(1)},
		{"IIIm", k2 * d * p.lm * fem / (m.over2(re) * r3), math.Inf(1)},
		{"IIIs", k3 * d * p.ls * fem / (m.k3(re) * r3), 2 * k3 * d * p.ls * fem / (m.k3(re) * r3)},
		{"IV", d * d * math.Sqrt(2*fem*p.fyb/(3*(1+re))) / r3, 2 * d * d * math.Sqrt(2*fem*p.fyb/(3*(1+re))) / r3},
	}
	z := math.Inf(1)
	for _, x := range modes {
		v := x.single
		if p.double {
			v = x.twice
		}
		if p.only == "" || p.only == x.name {
			z = math.Min(z, v)
		}
	}
	return z
}

// A printed cell with the case that it is for.
type printedCell struct {
	pin
	table, text   string
	printed, step float64
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// lateralCells reads the lateral cells of the printed tables.
func lateralCells(t *testing.T) []printedCell {
	t.Helper()
	file, err := os.Open("../../internal/published/data/conn_tables.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	all := fasten.Fasteners()
	var out []printedCell
	for _, l := range lines[1:] {
		c := printedCell{table: l[0], text: l[1], printed: number(t, l[2]), step: number(t, l[3])}
		if strings.HasPrefix(c.table, "12.2") || strings.HasPrefix(c.table, "11") {
			continue
		}
		words := map[string]string{}
		for _, w := range strings.Fields(c.text) {
			if k, v, ok := strings.Cut(w, "="); ok {
				words[k] = v
			} else if strings.HasPrefix(w, "No.") || strings.HasSuffix(w, "d") {
				words["size"] = w
			}
		}
		c.lag, c.screw = strings.Contains(c.text, "lag"), strings.Contains(c.text, "screw")
		c.ls, c.g = number(t, words["ts"]), number(t, words["G"])
		if words["D"] != "" {
			c.d = number(t, words["D"])
		}
		kind := fasten.Nail
		switch {
		case c.lag:
			kind = fasten.LagScrew
		case c.screw:
			kind = fasten.WoodScrew
		case strings.Contains(c.text, "bolt"):
			kind = fasten.Bolt
		}
		for _, f := range all {
			size := strings.Fields(f.Name)[0]
			if f.Kind == kind && (math.Abs(f.Diameter/measure.Inch-c.d) < 1e-6 || c.d == 0 && size == words["size"]) {
				c.d, c.root, c.fyb = math.Round(f.Diameter/measure.Inch*1e6)/1e6, math.Round(f.Root/measure.Inch*1e6)/1e6, math.Round(f.Yield/measure.PSI)
			}
		}
		if c.fyb == 0 {
			t.Fatalf("no fastener for %s", c.text)
		}
		switch {
		case kind == fasten.Bolt:
			c.lm = number(t, words["tm"])
		case c.lag:
			c.lm = 8 * c.d // the point's half is of no matter here
		default:
			c.lm = 9 * c.d
		}
		if strings.Contains(c.text, "A36") || words["theta_s"] == "steel" {
			c.steel = 87000
		} else if strings.Contains(c.text, "A653") {
			c.steel = 61850
		}
		if words["theta_m"] != "" {
			c.thetaM = number(t, words["theta_m"])
		}
		if a := words["theta_s"]; a != "" && a != "steel" {
			c.thetaS = number(t, a)
		}
		c.double = c.table == "12F" || c.table == "12G"
		out = append(out, c)
	}
	return out
}

// broken counts the cells that a mutant does not reproduce, halves up.
func (m mutant) broken(cells []printedCell) int {
	n := 0
	for _, c := range cells {
		if c.step*math.Floor(m.z(c.pin)/c.step+0.5+1e-9) != c.printed {
			n++
		}
	}
	return n
}

// hands are values of single modes worked by hand, lbf: the only outside values
// that tell the coefficient of mode IIIm, which governs no printed cell. The first
// has Re = 1, where 1 + 2Re and 2 + Re are the same; the second tells them apart.
var hands = []struct {
	pin  pin
	want float64
}{
	{pin{d: 0.5, fyb: 45000, lm: 1, ls: 3.5, mainFe: 5600, sideFe: 5600, only: "IIIm"}, 534.2114},
	{pin{d: 0.5, fyb: 45000, lm: 0.25, ls: 1.5, mainFe: 87000, sideFe: 5600, only: "IIIm"}, 825.728},
}

func (m mutant) missed() int {
	n := 0
	for _, h := range hands {
		if math.Abs(m.z(h.pin)-h.want) > 0.001 {
			n++
		}
	}
	return n
}

func TestPrintedCellsTellMistakesFromRules(t *testing.T) {
	cells := lateralCells(t)
	if len(cells) < 300 {
		t.Fatalf("only %d lateral cells", len(cells))
	}
	right := rule("the rule")
	if n := right.broken(cells); n != 0 {
		t.Fatalf("the equations themselves break %d cells", n)
	}
	if n := right.missed(); n != 0 {
		t.Fatalf("the equations themselves miss %d hand values", n)
	}
	for _, change := range []struct {
		name string
		make func(m *mutant)
		hand bool // no cell tells it, the hand values do
	}{
		{"bearing not rounded to 50 psi", func(m *mutant) { m.fe = func(x float64) float64 { return x } }, false},
		{"no Kθ", func(m *mutant) { m.noTheta = true }, false},
		{"lag screws with the shank's diameter", func(m *mutant) { m.shank = true }, false},
		{"bearing of lag screws at the root", func(m *mutant) { m.feRoot = true }, false},
		{"no Kθ on lag screws with small roots", func(m *mutant) { m.noSmall = true }, false},
		{"KD always 2.2", func(m *mutant) { m.kd = func(float64) float64 { return 2.2 } }, false},
		{"Rd of mode II 4", func(m *mutant) { m.rd2 = 4 }, false},
		{"k3 with 1 + 2Re", func(m *mutant) { m.k3 = func(re float64) float64 { return 1 + 2*re } }, false},
		{"k2 with 2 + Re under its root", func(m *mutant) { m.k2 = func(re float64) float64 { return 2 + re } }, true},
		{"mode IIIm over 2 + Re", func(m *mutant) { m.over2 = func(re float64) float64 { return 2 + re } }, false},
	} {
		m := rule(change.name)
		change.make(&m)
		cells, hands := m.broken(cells), m.missed()
		t.Logf("%s: breaks %d cells, %d hand values", m.name, cells, hands)
		if change.hand && hands == 0 || !change.hand && cells == 0 {
			t.Errorf("%s: nothing printed tells it from the rule", m.name)
		}
		if change.hand && cells > 0 {
			t.Errorf("%s: it breaks %d cells, though mode IIIm was to govern none", m.name, cells)
		}
	}
}
