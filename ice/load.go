package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// Machine is a motor vehicle in the load. The zero value is none: people on
// foot, a sled pulled by hand.
type Machine int

// The machines that the public tables name.
const (
	NoMachine  Machine = iota
	Snowmobile         // or an all-terrain vehicle
	Car
	LightTruck // pickup, van
	Truck
)

// machines maps a machine to the kinds of table rows that speak of it.
var machines = []struct {
	name  string
	kinds []string
}{
	NoMachine:  {"no machine", nil},
	Snowmobile: {"snowmobile", []string{"snowmobile"}},
	Car:        {"car", []string{"car", "car or group", "car or light truck", "any vehicle"}},
	LightTruck: {"light truck", []string{"light truck", "car or light truck", "any vehicle"}},
	Truck:      {"truck", []string{"truck", "large truck", "any vehicle"}},
}

// String returns the machine's name.
func (m Machine) String() string {
	if m < 0 || int(m) >= len(machines) {
		return "no machine known"
	}
	return machines[m].name
}

// A Crossing is a load that moves over the ice: everything that may stand on
// the one spot at one time.
type Crossing struct {
	Mass    float64 // kg: people, sled, machine and piece together
	People  int     // on the one spot; none counts as one, since somebody goes with the load
	Machine Machine
	Others  []Other // what else is on the ice
}

// An Other is a load elsewhere on the ice. Within the distance that the rules
// ask for between loads, or within four characteristic lengths, where bowls
// meet, it counts with the load as one spot.
type Other struct {
	Mass     float64 // kg
	People   int
	Distance float64 // m; NaN counts as near
}

// person is the least mass in kg that a person counts for, with clothes, tools
// and a pack: our choice, so that a forgotten person cannot lighten a load.
const person = 100.0

// several is the number of people from which a group counts as larger. The
// sources give none; pairs and small groups are one row, larger groups
// another: our choice.
const several = 4

// own returns the mass in kg of the load itself.
func (c Crossing) own() float64 { return math.Max(c.Mass, person*float64(c.People)) }

// counted returns the mass in kg that the rules are applied to.
func (c Crossing) counted() float64 { return c.gathered().own() }

// gathered returns the load with all others that are near as one.
func (c Crossing) gathered() Crossing {
	if len(c.Others) == 0 {
		return c
	}
	reach := c.reach()
	out := Crossing{Mass: c.Mass, People: c.People, Machine: c.Machine}
	for _, o := range c.Others {
		if !(o.Distance > reach) {
			out.Mass += math.Max(o.Mass, person*float64(o.People))
			out.People += o.People
		}
	}
	return out
}

// reach returns the distance in m within which loads count as one: that of the
// rules for all of them together, and four characteristic lengths at the
// thickness that the strictest class asks for under all of them, 30 cm or
// more, with sound ice. It does not shrink with the sheet: thin ice must not part loads.
func (c Crossing) reach() float64 {
	total := c.own()
	people := c.People
	for _, o := range c.Others {
		total += math.Max(o.Mass, person*float64(o.People))
		people += o.People
	}
	all := Crossing{Mass: total, People: people, Machine: c.Machine}
	d, _, err := all.Spacing()
	if err != nil {
		return math.Inf(1)
	}
	h, err := defaultClass().Thickness(all.own() * measure.Gravity)
	if err != nil {
		return math.Inf(1)
	}
	p := Plate{Thickness: math.Max(h, 0.30), E: rangeElastic.Hi, Nu: poisson}
	return math.Max(d, 4*p.length())
}

// check refuses a load without mass or with a negative number of people.
func (c Crossing) check() error {
	if err := (measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e6, OpenLo: true, Source: sizeRange}).Check("mass of the load", c.Mass); err != nil {
		return err
	}
	if err := (measure.Range{Lo: 0, Hi: 1e4, Source: sizeRange}).Check("people", float64(c.People)); err != nil {
		return err
	}
	for i, o := range c.Others {
		n := fmt.Sprintf("other load %d, ", i+1)
		if err := (measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e6, OpenLo: true, Source: sizeRange}).Check(n+"mass", o.Mass); err != nil {
			return err
		}
		if err := (measure.Range{Lo: 0, Hi: 1e4, Source: sizeRange}).Check(n+"people", float64(o.People)); err != nil {
			return err
		}
		if math.IsNaN(o.Distance) {
			continue
		}
		if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: 1e6, Source: sizeRange}).Check(n+"distance", o.Distance); err != nil {
			return err
		}
	}
	if c.Machine < 0 || int(c.Machine) >= len(machines) {
		return &measure.Error{Field: "machine", Text: fmt.Sprint(int(c.Machine)), Class: measure.ErrName, Want: "one of NoMachine, Snowmobile, Car, LightTruck, Truck"}
	}
	return nil
}

// label names the load: "250 kg with 3 people".
func (c Crossing) label() string {
	text := measure.Mass.Format(c.Mass, measure.SI)
	if c.People == 1 {
		text += " with 1 person"
	} else if c.People > 1 {
		text += fmt.Sprintf(" with %d people", c.People)
	}
	if c.Machine != NoMachine {
		text += " and a " + c.Machine.String()
	}
	return text
}

// A need is the thickness that the rules ask for.
type need struct {
	thickness float64 // m, all factors applied
	rule      *measure.Source
	what      string // the governing row or class
	factors   []measure.Factor
}

// raise multiplies the thickness by a factor, if it is one.
func (n *need) raise(f measure.Factor) {
	if f.Value != 1 {
		n.thickness *= f.Value
		n.factors = append(n.factors, f)
	}
}

// base returns the thickness required before any factor: the greatest of the
// rule by weight and the public tables' rows for such people and machines that
// were read or quoted. The rule by weight is the class that the caller named;
// with none, the strictest class that was read and every table by weight that
// was read or quoted.
func (s Sheet) base(c Crossing) (need, error) {
	c = c.gathered()
	class := s.class()
	h, err := class.Thickness(c.counted() * measure.Gravity)
	if err != nil {
		return need{}, err
	}
	n := need{thickness: h, rule: class.Source, what: "bearing class " + class.Name + ", " + class.Printed}
	take := func(r Row, h float64) {
		if h > n.thickness {
			n.thickness, n.rule, n.what = h, r.Source, r.Load+", "+r.Printed
		}
	}
	for _, t := range loadTables() {
		if t.Source.Status < measure.Quoted {
			continue
		}
		for m := NoMachine; m <= c.Machine; m++ { // no less than for a lighter one
			take(t.byKind(Crossing{Mass: c.Mass, People: c.People, Machine: m}))
		}
		if s.Class == nil {
			take(t.byWeight(c))
		}
	}
	return n, nil
}

// needs applies what is known of the sheet to the base: white ice, thaw,
// cracks and water. What is not known is not counted here; it denies the
// answer, and the notes say how much it may add.
func (s Sheet) needs(load Crossing, white float64, w weather) (need, error) {
	n, err := s.base(load)
	if err != nil {
		return n, err
	}
	n.raise(measure.Factor{Symbol: "white", Name: "white ice", Value: white, Why: s.Scheme.String(), Source: minnesotaWhite})
	n.raise(measure.Factor{Symbol: "thaw", Name: "recent thaw", Value: w.factor, Why: w.why, Source: w.by})
	share, _ := s.Cracks.Share()
	n.raise(measure.Factor{
		Symbol: "crack", Name: s.Cracks.String(), Value: 1 / math.Sqrt(share),
		Why: cracksWords(), Source: finland,
	})
	if s.Water != Lake {
		n.raise(measure.Factor{
			Symbol: "river", Name: s.Water.String(), Value: 1 / math.Sqrt(0.85),
			Why: "15 % less load on hard river ice; unknown water counts as a river", Source: maineChart,
		})
	}
	n.thickness = math.Round(n.thickness*1e9) / 1e9 // so that a tie does not hang on the last bit
	return n, nil
}
