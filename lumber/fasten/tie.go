package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Tie is what holds a drum: rope, chain, wire rope or a strap round it or to its
// lip. Its strength is a plain number from the table of what it is made of.
type Tie struct {
	Strength     float64 // minimum breaking load of one part, N; never an average; wet, if it weakens wet
	Efficiency   float64 // of the weakest end (clip, sleeve, knot), a share; 0: hammered or unknown, no rated value
	Parts        int     // parts that share the load side by side; 0 is 1
	Rounded      bool    // every bend lies over a thimble or a rounded edge; else half is lost at a square one
	DesignFactor float64 // a ratio; 0: 12, for what people depend on; wire rope in general rigging 5
	Point        float64 // what the lip, hole or eye carries that it is made to, N, allowable; 0: unknown, no answer
	Stiffness    float64 // of the tie, N/m; needed where it can go slack; 0: unknown
	Slack        float64 // how far the drum drops before the tie comes taut, m
}

// A Drum is what a tie holds. Its zero Watched is the cautious one: nobody looks
// into it, and it counts as full of water.
type Drum struct {
	Mass    float64 // of the drum with its fittings, kg
	Push    float64 // buoyancy with the drum pressed under, N; 0: unknown
	Watched bool    // opened and looked into: Leak is what it holds at most; else as much as it displaces
	Leak    float64 // water leaked in, kg
	Drag    float64 // what waves, current or a boat's wash pull sideways, N
	Above   bool    // joists or boards lie above the drum and take its push
}

// bent is what is left where a tie bends over a square edge.
const bent = 0.5

var (
	srcTie   = &measure.Source{Title: "Minimum breaking load over a design factor", Locator: "factor 12 where people depend on it, 5 in general rigging (Cordage Institute CI 1308-96; rigging tables)", Status: measure.Read}
	srcBent  = &measure.Source{Title: "Bend over a small pin or edge without a thimble", Locator: "50 % or less", Status: measure.Memory}
	srcEnds  = &measure.Source{Title: "Efficiency of the tie's ends", Locator: "the caller's, from the table of terminations", Status: measure.OwnChoice}
	srcPoint = choice("What the tie is made to must carry what the tie is asked")
)

// Allowable returns what the tie itself carries, N: strength × efficiency × bend
// × parts over the design factor. Both losses are counted, as if the end lay on
// the edge, which is our choice. An efficiency that is not known gives an error.
func (tie Tie) Allowable() (float64, []measure.Factor, error) {
	if err := tie.check(); err != nil {
		return 0, nil, err
	}
	if tie.Efficiency == 0 {
		return 0, nil, unknown("Efficiency", "the efficiency of the tie's end: a hammered or unknown end has no rated value")
	}
	n := math.Max(1, float64(tie.Parts))
	design := tie.DesignFactor
	why := "given"
	if design == 0 {
		design, why = 12, "people depend on it"
	}
	bend := measure.Factor{Symbol: "bend", Name: "edge", Value: bent, Why: "over a square edge", Source: srcBent}
	if tie.Rounded {
		bend.Value, bend.Why = 1, "over a thimble or a rounded edge"
	}
	factors := []measure.Factor{
		{Symbol: "end", Name: "termination", Value: tie.Efficiency, Why: "weakest end", Source: srcEnds},
		bend,
		{Symbol: "n", Name: "parts", Value: n, Why: "share the load", Source: srcTie},
		{Symbol: "1/SF", Name: "design factor", Value: 1 / design, Why: why, Source: srcTie},
	}
	x := tie.Strength
	for _, f := range factors {
		x *= f.Value
	}
	return x, factors, nil
}

func (tie Tie) check() error {
	return checkAll(
		ranged{"Strength", tie.Strength, measure.Range{Kind: measure.Force, Hi: 1e7, OpenLo: true}},
		ranged{"Efficiency", tie.Efficiency, measure.Range{Kind: measure.Ratio, Hi: 1}},
		ranged{"Parts", float64(tie.Parts), measure.Range{Kind: measure.Ratio, Hi: 20}},
		ranged{"Point", tie.Point, measure.Range{Kind: measure.Force, Hi: 1e7}},
		ranged{"Stiffness", tie.Stiffness, measure.Range{Kind: measure.LineLoad, Hi: 1e12}},
		ranged{"Slack", tie.Slack, measure.Range{Kind: measure.Length, Hi: 2}},
		tie.design(),
	)
}

// design is the range of the design factor, 0 being the cautious one.
func (tie Tie) design() ranged {
	r := measure.Range{Kind: measure.Ratio, Lo: 1, Hi: 50}
	if tie.DesignFactor == 0 {
		r.Lo = 0
	}
	return ranged{"DesignFactor", tie.DesignFactor, r}
}

// Jerk returns the force, N, in a tie when a weight (N) drops through its slack
// and brings it taut:
//
//	F = W (1 + √(1 + 2 k s/W))
//
// with the tie's stiffness k, exact for an even spring. Without slack the load still
// comes on at once and is 2 W. Slack in a tie of unknown stiffness is an error.
func (tie Tie) Jerk(weight float64) (float64, error) {
	if err := tie.check(); err != nil {
		return 0, err
	}
	if err := forces.Check("weight", weight); err != nil {
		return 0, err
	}
	if tie.Slack > 0 && tie.Stiffness == 0 {
		return 0, unknown("Stiffness", "how stiff the tie is, to know the jerk at the end of its slack")
	}
	// As W + √(W² + 2 k s W), so that no weight gives no force.
	return weight + math.Sqrt(weight*weight+2*tie.Stiffness*tie.Slack*weight), nil
}

// Check compares the tie, and the point it is made to, with what a drum asks of
// it. A tie stops the drum from dropping out and from wandering: its own weight
// with the water in it, with the jerk of its slack, and the drag, added up
// whatever their directions. Only where nothing lies above the drum does it also
// hold the drum down: the full push less the weight of the empty drum. Both are
// checked, by statics and [Tie.Allowable].
func (tie Tie) Check(drum Drum) ([]measure.Check, error) {
	weights := measure.Range{Kind: measure.Mass, Hi: 1e5}
	if err := checkAll(
		ranged{"Mass", drum.Mass, measure.Range{Kind: measure.Mass, Hi: 1e5, OpenLo: true}},
		ranged{"Leak", drum.Leak, weights},
		ranged{"Drag", drum.Drag, forces},
		ranged{"Push", drum.Push, forces},
	); err != nil {
		return nil, err
	}
	if err := tie.check(); err != nil {
		return nil, err
	}
	water, rest, err := drum.water()
	var hangs float64
	if err == nil {
		hangs, err = tie.Jerk((drum.Mass + water) * measure.Gravity)
	}
	out := tie.pair("drum hanging on its tie", hangs+drum.Drag, err, "its weight, the water in it and the jerk of the slack, with the drag added")
	for i := range out {
		out[i].Rests = append(out[i].Rests, rest)
	}
	if drum.Above {
		return out, nil
	}
	held := math.Max(0, drum.Push-drum.Mass*measure.Gravity) + drum.Drag
	if drum.Push == 0 {
		err = unknown("Push", "the buoyancy of the drum pressed under: nothing above it takes its push")
	} else {
		err = nil
	}
	return append(out, tie.pair("drum held down by its tie", held, err, "its full push less its weight, with the drag added")...), nil
}

// water returns how much water the drum may hold, kg: all that it displaces unless
// somebody looks.
func (d Drum) water() (float64, measure.Assumption, error) {
	a := measure.Assumption{Name: "water in the drum", Known: measure.Measured, Text: measure.Mass.Format(d.Leak, measure.US) + ", looked into"}
	if d.Watched {
		return d.Leak, a, nil
	}
	a.Known, a.Text = measure.Assumed, "full: nobody looks"
	if d.Push == 0 {
		return 0, a, unknown("Push", "the buoyancy of the drum, to know what it weighs full of water")
	}
	return math.Max(d.Leak, d.Push/measure.Gravity), a, nil
}

// pair checks the tie and its point under a force.
func (tie Tie) pair(name string, force float64, why error, note string) []measure.Check {
	c := measure.Check{Name: name, Kind: measure.Force, Value: force, Limit: math.NaN(), Rule: srcTie, Notes: []string{note}, Err: why}
	at := c
	at.Name, at.Rule, at.Limit = name+": what it is made to", srcPoint, tie.Point
	if tie.Point == 0 {
		at.Limit, at.Err = math.NaN(), unknown("Point", "what the lip, hole or eye carries that the tie is made to")
	}
	allowed, factors, err := tie.Allowable()
	if c.Err == nil {
		c.Err = err
	}
	if c.Err == nil {
		c.Limit, c.Factors = allowed, factors
	}
	if why != nil {
		c.Value, at.Value, at.Err = math.NaN(), math.NaN(), why
	}
	return []measure.Check{c, at}
}
