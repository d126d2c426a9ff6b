package fasten

import (
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Forces are forces, N, in the directions a bracket or hanger is asked or printed
// for. Along is the joist pulled out of it; Reversal is a load that goes to and
// fro, as waves make it.
type Forces struct{ Down, Up, Lateral, Along, Reversal float64 }

// The directions, by their place in Forces.
const (
	down = iota
	up
	sidewards
	outward
	toAndFro
	directions
)

// named lists the forces with their names.
func (f Forces) named() [directions]struct {
	name string
	x    float64
} {
	return [directions]struct {
		name string
		x    float64
	}{{"down", f.Down}, {"uplift", f.Up}, {"lateral", f.Lateral}, {"along the joist", f.Along}, {"to and fro", f.Reversal}}
}

// A Connector is a ready-made bracket, hanger or angle. Its figures are the
// maker's printed allowables and the user's to enter: the package has none. What
// is not printed is 0 and carries nothing.
type Connector struct {
	Name    string
	Printed Forces  // allowables, N, 0 where none is printed
	For     Forces  // a ratio: the duration factor each was printed for (1, 1.15, 1.6); 0 is not said: taken as 1.6
	Basis   float64 // a ratio: the specific gravity the figures were printed for; 0 is not said: taken as 0.55

	Nail        Fastener // the nails the figures were printed for
	HeaderNails int      // into the header; 0 is not known
	JoistNails  int      // into the joist; 0 is not known
	Steel       float64  // thickness of the sheet, m

	Screws       bool // screws are used instead of the nails
	ScrewsListed bool // and the maker lists these screws
}

// Printed figures are tested on wood of 0.49 to 0.55.
const testedG = 0.55

// mostPrinted is the longest factor a printed figure can stand for.
const mostPrinted = 1.6

var srcPrinted = &measure.Source{Title: "The maker's printed allowables, adjusted", Locator: "by duration, species and moisture, bounded by the nails", Status: measure.OwnChoice}

func (c Connector) check() error {
	figure := measure.Range{Kind: measure.Force, Hi: 1e6}
	factor := measure.Range{Kind: measure.Ratio, Hi: mostPrinted, Source: nds("11.3.2, at most 1.6 on connections", measure.Quoted)}
	for i, f := range c.Printed.named() {
		if err := checkAll(ranged{"Printed: " + f.name, f.x, figure}, ranged{"For: " + f.name, c.For.named()[i].x, factor}); err != nil {
			return err
		}
	}
	many := measure.Range{Kind: measure.Ratio, Hi: 200}
	if err := checkAll(ranged{"HeaderNails", float64(c.HeaderNails), many}, ranged{"JoistNails", float64(c.JoistNails), many}); err != nil {
		return err
	}
	if c.Basis != 0 {
		return gravities.Check("Basis", c.Basis)
	}
	return nil
}

// Check compares the forces asked of a connector with what it carries in wood of
// a grade, in each direction asked:
//
//	printed × CD/CD printed (at most 1) × species (at most 1) × CM × Ct
//
// and never more than its own nails: those in the header down and sideways, the
// weaker of header and joist up and to and fro, and along the joist its nails
// across and the header's by withdrawal (NDS 12). That is our choice: the maker's
// rules come first. A figure that is not printed is 0, to be carried by angles or
// bolts. Screws where the figure assumes nails make every figure 0 unless the
// maker lists them. Nails that are not known give no answer.
func (c Connector) Check(asked Forces, wood lumber.Grade, s Service, t lumber.Duration) ([]measure.Check, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	for _, f := range asked.named() {
		if err := forces.Check(f.name, f.x); err != nil {
			return nil, err
		}
	}
	cd, err := duration(t)
	if err != nil {
		return nil, err
	}
	var out []measure.Check
	for i, f := range asked.named() {
		if f.x > 0 {
			out = append(out, c.direction(i, f.x, wood, s, cd, t))
		}
	}
	return out, nil
}

// direction checks one direction, by its number in Forces.
func (c Connector) direction(i int, force float64, wood lumber.Grade, s Service, cd measure.Factor, t lumber.Duration) measure.Check {
	printed := c.Printed.named()[i]
	k := measure.Check{Name: c.title() + ", " + printed.name, Kind: measure.Force, Value: force, Rule: srcPrinted, Rests: s.rests()}
	if printed.x == 0 {
		k.Notes = append(k.Notes, "no figure is printed for this direction: it carries nothing; use angles or bolts through")
		return k
	}
	if c.Screws && !c.ScrewsListed {
		k.Notes = append(k.Notes, "the figure assumes nails: screws that the maker does not list carry nothing")
		return k
	}
	factors, err := c.factors(i, wood, s, cd, &k)
	if err != nil {
		k.Limit, k.Err = math.NaN(), err
		return k
	}
	k.Factors, k.Limit = factors, printed.x
	for _, f := range factors {
		k.Limit *= f.Value
	}
	bound, err := c.bound(i, wood, s, t)
	if err != nil {
		k.Limit, k.Err = math.NaN(), err
		return k
	}
	if bound < k.Limit {
		k.Notes = append(k.Notes, fmt.Sprintf("its nails carry less than the adjusted figure of %s", measure.Force.Format(k.Limit, measure.US)))
		k.Limit = bound
	}
	return k
}

func (c Connector) title() string {
	if c.Name == "" {
		return "connector"
	}
	return c.Name
}

// factors returns what a printed figure is multiplied by.
func (c Connector) factors(i int, wood lumber.Grade, s Service, cd measure.Factor, k *measure.Check) ([]measure.Factor, error) {
	stands := c.For.named()[i].x
	if stands == 0 {
		stands = mostPrinted
		k.Rests = append(k.Rests, measure.Assumption{Name: "duration the figure is printed for", Text: "not said: taken as 1.6", Known: measure.Assumed})
	}
	basis := c.Basis
	if basis == 0 {
		basis = testedG
		k.Rests = append(k.Rests, measure.Assumption{Name: "species the figure is printed for", Text: "not said: taken as a specific gravity of 0.55", Known: measure.Assumed})
	}
	lasting := measure.Factor{Symbol: "CD/CD printed", Name: "load duration", Value: math.Min(1, cd.Value/stands), Why: cd.Why + "; a tested figure is never raised", Source: cd.Source}
	species := measure.Factor{Symbol: "G", Name: "species", Value: 1, Why: "wood as tested or denser", Source: srcPrinted}
	g := wood.G.SI()
	if err := gravities.Check("Grade.G", g); err != nil {
		return nil, err
	}
	if g < basis {
		here, err := c.nail(g, wood, s, lumber.TenYears)
		if err != nil {
			return nil, err
		}
		there, err := c.nail(basis, wood, s, lumber.TenYears)
		if err != nil {
			return nil, err
		}
		species.Value, species.Why = math.Min(1, here.Value/there.Value), "the nails' lateral value in this wood against that tested"
	}
	ct, err := s.temperature()
	if err != nil {
		return nil, err
	}
	return []measure.Factor{lasting, s.sideways(0, false), ct, species}, nil
}

// nail returns the adjusted lateral value of one nail through the sheet.
func (c Connector) nail(g float64, wood lumber.Grade, s Service, t lumber.Duration) (Capacity, error) {
	if c.Nail.Kind != 0 && !c.Nail.Kind.nail() {
		return Capacity{}, &measure.Error{Field: "Nail", Text: c.Nail.Kind.String(), Class: measure.ErrName, Want: "the nails the figures were printed for"}
	}
	if c.Nail.Kind == 0 || !(c.Steel > 0) {
		return Capacity{}, unknown("Nail, Steel", "the nails and the thickness of the sheet, to bound the figure")
	}
	wood.G = lumber.Value{Printed: g, Unit: 1}
	depth := math.Max(c.Nail.Length, 0.01)
	j := Joint{Fastener: c.Nail, Main: Piece{Grade: wood, Thickness: depth}, Side: Piece{Material: Sheet, Thickness: c.Steel}, Service: s}
	return j.Lateral(t)
}

// bound returns what the nails carry in a direction, N.
func (c Connector) bound(i int, wood lumber.Grade, s Service, t lumber.Duration) (float64, error) {
	z, err := c.nail(wood.G.SI(), wood, s, t)
	if err != nil {
		return 0, err
	}
	header, joist := float64(c.HeaderNails)*z.Value, float64(c.JoistNails)*z.Value
	need := func(n int, where string) error {
		if n > 0 {
			return nil
		}
		return unknown(where, "how many nails hold it, to bound the figure")
	}
	if err := need(c.HeaderNails, "HeaderNails"); err != nil {
		return 0, err
	}
	if i == down || i == sidewards {
		return header, nil
	}
	if err := need(c.JoistNails, "JoistNails"); err != nil {
		return 0, err
	}
	if i != outward {
		return math.Min(header, joist), nil
	}
	pull, err := c.pulled(wood, s, t)
	return math.Min(joist, pull), err
}

// pulled returns the withdrawal of the header's nails, N.
func (c Connector) pulled(wood lumber.Grade, s Service, t lumber.Duration) (float64, error) {
	j := Joint{Fastener: c.Nail, Main: Piece{Grade: wood, Thickness: math.Max(c.Nail.Length, 0.01)}, Side: Piece{Material: Sheet, Thickness: c.Steel}, Service: s, PerRow: c.HeaderNails}
	all, err := j.Pull(t)
	if err != nil {
		return 0, err
	}
	return all[0].Value, all[0].Err
}
