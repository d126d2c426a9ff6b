package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Service says how wet and how hot a joint is. The zero value is a dock's: made
// or used wet, and wet and dry by turns.
type Service struct {
	Dry         bool    // stays at 19 % moisture or less in use; not on a dock
	Seasoned    bool    // was at 19 % or less when it was made
	Soaked      bool    // was wet when made and never dries: under water for good
	Temperature float64 // sustained, °C; up to 37.8 °C (100 °F) nothing is reduced
}

// A Joint is a main and a side piece held by a group of like fasteners. The point
// or the far end of a driven fastener is in the main piece; in double shear the
// main piece lies between two like side pieces, and a driven fastener's point is
// in the far one.
type Joint struct {
	Fastener   Fastener
	Main, Side Piece
	Double     bool
	Gap        float64 // between the faces, m: washers under a ledger; outside the tables
	Toe        bool    // toe-nailed: started a third of its length up, at 30° to the side piece

	// A row runs in the direction of the load. 0 fasteners or rows count as 1.
	PerRow, Rows int
	Spacing      float64 // in a row, m
	Between      float64 // rows, m

	Service
	Shank    bool    // of a bolt: its threads are known to keep out of the shear planes (NDS 12.3.7)
	Prebored bool    // of nails and screws: lead holes
	Washer   float64 // diameter of a round or side of a square plate under head and nut, m; 0: cut washer
	Hole     float64 // of bolts, diameter, m; 0: 1/16 in. over the bolt

	// DrumAtMain and DrumAtSide say that a drum lies against the outer face of the
	// main or the side piece; the tail of a bolt then points the other way.
	DrumAtMain, DrumAtSide bool

	Loose bool // left loose on purpose, to let the frame move
}

// count returns how many fasteners the joint has.
func (j Joint) count() int  { return j.perRow() * j.rows() }
func (j Joint) perRow() int { return max(j.PerRow, 1) }
func (j Joint) rows() int   { return max(j.Rows, 1) }

func (j Joint) check() error {
	if err := j.Main.check("Main"); err != nil {
		return err
	}
	if err := j.Side.check("Side"); err != nil {
		return err
	}
	many := measure.Range{Kind: measure.Ratio, Hi: 1000}
	if err := checkAll(
		ranged{"Gap", j.Gap, measure.Range{Kind: measure.Length, Hi: 0.15}},
		ranged{"PerRow", float64(j.PerRow), many},
		ranged{"Rows", float64(j.Rows), many},
		ranged{"Spacing", j.Spacing, distances},
		ranged{"Between", j.Between, distances},
		ranged{"Washer", j.Washer, measure.Range{Kind: measure.Length, Hi: 0.3}},
		ranged{"Hole", j.Hole, measure.Range{Kind: measure.Length, Hi: 0.1}},
		ranged{"Temperature", j.Temperature, measure.Range{Kind: measure.Temperature, Lo: -90, Hi: 66, Source: srcCt}},
	); err != nil {
		return err
	}
	driven := j.Fastener.Kind != Bolt
	why := ""
	switch {
	case !(j.Main.Material == Wood || j.Side.Material == Wood):
		why = "one of the pieces must be wood"
	case driven && j.Main.Material != Wood:
		why = "only bolts are covered in steel or concrete"
	case j.Side.Material == Concrete:
		why = "concrete can only be the main piece"
	case j.Double && j.Main.Material == Concrete:
		why = "concrete in double shear is not covered"
	case j.Double && driven && j.Side.Material != Wood:
		why = "a driven fastener must end in wood"
	case j.Toe && (!driven || j.Double || j.Fastener.Kind == LagScrew):
		why = "only nails and wood screws in single shear are driven at a slant"
	case j.Toe && (j.Gap > 0 || j.Side.Material != Wood):
		why = "toe-nailing needs a wooden side piece in contact"
	}
	if why != "" {
		return &measure.Error{Field: "joint", Why: why, Class: measure.ErrNotComputed}
	}
	return nil
}

// slant is the angle of a toe-nail to the side piece, NDS 12.1.6.
const slant = math.Pi / 6

// A grip is how a fastener sits in a joint, inches.
type grip struct {
	s          steel
	d          float64 // in the yield equations
	lm, ls     float64 // bearing lengths
	from, to   float64 // where the piece that holds the end lies, from under the head
	depth      float64 // penetration that the rules count
	full       float64 // penetration that the tables are made for; 0: none asked
	bodySource string  // why d is what it is
}

// sit places the fastener in the joint.
func (j Joint) sit() (grip, error) {
	var g grip
	if err := j.check(); err != nil {
		return g, err
	}
	s, err := j.Fastener.resolve()
	if err != nil {
		return g, err
	}
	if s.d > 1+hair {
		return g, measure.Range{Kind: measure.Length, Hi: measure.Inch, OpenLo: true, Source: srcYield}.Check("Diameter", j.Fastener.Diameter)
	}
	tm, ts, gap := inches(j.Main.Thickness), inches(j.Side.Thickness), inches(j.Gap)
	g = grip{s: s, lm: tm, ls: ts, from: ts + gap, to: ts + gap + tm, d: s.root, bodySource: "root of the thread"}
	end := tm
	if j.Double {
		end = ts
		g.from, g.to = g.to+gap, g.to+gap+ts
	}
	if s.kind.nail() {
		g.bodySource = "a nail's own diameter"
	}
	if s.kind == Bolt {
		if reach := (measure.Range{Kind: measure.Length, Lo: (g.to - hair) * measure.Inch, Hi: 30}); s.length > 0 && j.Main.Material != Concrete && !reach.Has(j.Fastener.Length) {
			return g, reach.Check("Length of the bolt", j.Fastener.Length)
		}
		return g, j.body(&g)
	}
	if s.length == 0 {
		return g, unknown("Length", "the length of the fastener, to know how deep it goes")
	}
	if j.Toe {
		return g, j.toe(&g)
	}
	in := s.length - g.from
	far := math.Min(end, in-s.tip/2)
	if j.Double {
		g.ls = math.Min(ts, far)
	} else {
		g.lm = far
	}
	g.depth, g.full = math.Min(in, end), 10*s.d
	if s.kind == LagScrew {
		g.depth, g.full = math.Min(in-s.tip, end), 8*s.d
	}
	return g, g.deepEnough()
}

// deepEnough refuses less than the least penetration: 4D without the point for
// lag screws, 6D with it for nails and wood screws.
func (g grip) deepEnough() error {
	need, src := 6*g.s.d, srcDepth
	if g.s.kind == LagScrew {
		need, src = 4*g.s.d, srcDepthLag
	}
	r := measure.Range{Kind: measure.Length, Lo: (need - hair) * measure.Inch, Hi: 2, Source: src}
	return r.Check("penetration", g.depth*measure.Inch)
}

// toe places a toe-nail: ls = L/3, lm = L cos 30° - L/3. NDS 12.1.6 and 12.5.4.
func (j Joint) toe(g *grip) error {
	l, cos := g.s.length, math.Cos(slant)
	tm := inches(j.Main.Thickness)
	g.ls = l / 3
	g.lm = math.Min(l*cos-l/3, tm)
	g.depth, g.full = math.Min(l-l/(3*cos), tm/cos), 10*g.s.d
	return g.deepEnough()
}

// body chooses a bolt's diameter: the full body where the threads take up no more
// than a quarter of the bearing length in the piece that holds them, else the
// root. NDS 12.3.7.2. A length that is not known gives the root.
func (j Joint) body(g *grip) error {
	switch {
	case j.Shank:
		g.d, g.bodySource = g.s.d, "threads said to keep out of the shear planes"
		return nil
	case g.s.length == 0:
		g.bodySource = "root: the bolt's length is not known"
		return nil
	case j.Main.Material == Concrete:
		return nil
	}
	t, err := loaded()
	if err != nil {
		return err
	}
	washer := 0.0
	if p, err := t.part(g.s.d); err == nil {
		washer = p.thick
	}
	holds := g.to - g.from // length in the piece at the tail
	if j.tailAtSide() && !j.Double {
		holds = inches(j.Side.Thickness)
	}
	clear := g.s.length - g.s.thread - washer // of the body, from the head's face of the wood
	in := g.to - clear
	if in <= holds/4+hair {
		g.d, g.bodySource = g.s.d, "full body: threads take up no more than a quarter of the bearing"
	} else {
		g.bodySource = "root: threads take up more than a quarter of the bearing"
	}
	return nil
}

// tailAtSide reports whether a bolt's nut is on the side piece: where a drum lies
// against the main piece only.
func (j Joint) tailAtSide() bool { return j.DrumAtMain && !j.DrumAtSide }
