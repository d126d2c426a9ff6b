package season

import (
	"fmt"
	"math"
	"time"

	"example.org/floewright/lumber/measure"
)

// A State is the lake at the end of one day. Thicknesses are in metres.
type State struct {
	Date  time.Time
	Ice   bool
	Clear float64 // clear ice
	White float64 // white ice, from flooded snow
	Slush float64 // flooded snow that has not frozen yet, between white and clear ice
	Snow  float64 // depth of snow on top

	// Freeboard is the top of the ice over the water; below 0 water stands in
	// the snow or waits under the ice for a crack.
	Freeboard float64

	// Rot is the share of the ice melted between its grains, Strength what that
	// leaves of the strength, (1 - √(Rot/0.5))², and Effective the clear ice
	// and half of the white ice, times √Strength since loads rise with
	// thickness squared. Slush counts nothing.
	Rot, Strength, Effective float64

	FrostDays float64 // °C·day of frost since ice-on, for the degree-day rules
	Water     float64 // °C, mean of open water; 0 under ice
	Thaw      bool    // the day's mean, or its known high, reached 0 °C
	Forecast  bool

	// Snow that fell on the ice, water drawn into it, and what melted or was
	// shovelled or blown off, kg/m² since ice-on: Fell + Drawn = snow + slush +
	// white ice + Gone.
	Fell, Drawn, Gone float64

	rest rest
}

// rest is what the next day needs beside what is seen.
type rest struct{ crust, mass, resist, skin, frost float64 }

// sheet returns the state as the next day takes it up.
func (s *State) sheet() sheet {
	return sheet{
		ice: s.Ice, clear: s.Clear, white: s.White, slush: s.Slush, depth: s.Snow,
		water: s.Water, rot: s.Rot, frozen: s.FrostDays, fell: s.Fell, drawn: s.Drawn, gone: s.Gone,
		crust: s.rest.crust, mass: s.rest.mass, resist: s.rest.resist, skin: s.rest.skin, frost: s.rest.frost,
	}
}

// Total returns clear and white ice together, m, by definition.
func (s State) Total() float64 { return s.Clear + s.White }

// rotten is the porosity at which ice has no strength left: from memory of the
// literature on deteriorated ice, which gives about one half.
const rotten = 0.5

// A Model is the daily model of one lake with one set of params. It is safe
// for concurrent use.
type Model struct {
	lake Lake
	c    coefficients
	sun  [367]float64 // by day of the year
}

// New returns the model of a lake. The error names the number that is out of range.
func New(l Lake, p Params) (*Model, error) {
	if err := l.check(); err != nil {
		return nil, err
	}
	if err := p.check(); err != nil {
		return nil, err
	}
	m := &Model{lake: l, c: coefficientsOf(l, p)}
	for d := 1; d <= 366; d++ {
		m.sun[d] = sunThrough(l.Latitude, d, p.SunPower)
	}
	return m, nil
}

// with returns the model with other params; the sun is kept where it may be.
func (m *Model) with(p Params) *Model {
	n := &Model{lake: m.lake, c: coefficientsOf(m.lake, p), sun: m.sun}
	if p.SunPower != m.c.p.SunPower {
		for d := 1; d <= 366; d++ {
			n.sun[d] = sunThrough(m.lake.Latitude, d, p.SunPower)
		}
	}
	return n
}

// Params returns the params of the model.
func (m *Model) Params() Params { return m.c.p }

// Run is [Model.Run] of a lake's model, once; a lake that was never fitted takes
// Default().
func Run(l Lake, p Params, days []Day) ([]State, error) {
	m, err := New(l, p)
	if err != nil {
		return nil, err
	}
	return m.Run(days)
}

// Run returns the state at the end of each day, by Ashton's growth and the daily
// balance of heat that the package's page describes (constants by [Default]). The
// days follow each other without a gap; it is best to begin in late summer, since the
// model takes the water to have the mean temperature of the first days, and the lake
// to be open. The error is of class measure.ErrRange for weather that no day has,
// measure.ErrSyntax for days out of order.
func (m *Model) Run(days []Day) ([]State, error) {
	return m.run(begin(days), days)
}

// Continue is [Model.Run] from the state of the day before the first of days.
func (m *Model) Continue(from State, days []Day) ([]State, error) {
	if len(days) > 0 && number(days[0].Date) != number(from.Date)+1 {
		return nil, order(days[0].Date, "does not follow the state of "+from.Date.Format(time.DateOnly))
	}
	if err := from.check(); err != nil {
		return nil, err
	}
	return m.run(from.sheet(), days)
}

var (
	layers = measure.Range{Kind: measure.Length, Lo: 0, Hi: 20, Source: own("no lake has more")}
	sums   = measure.Range{Lo: 0, Hi: 1e5, Source: own("no winter has more")}
	warmth = measure.Range{Lo: -5, Hi: 50, Source: own("no lake is colder or warmer")}
)

// check returns the first field that no state can have.
func (s *State) check() error {
	for _, f := range []struct {
		name string
		x    float64
		in   measure.Range
	}{
		{"clear ice", s.Clear, layers},
		{"white ice", s.White, layers},
		{"slush", s.Slush, layers},
		{"snow", s.Snow, layers},
		{"share of the ice melted", s.Rot, measure.Range{Lo: 0, Hi: 1, Source: own("a share")}},
		{"degree-days of frost", s.FrostDays, sums},
		{"water", s.Water, warmth},
		{"snow fallen", s.Fell, sums},
		{"water drawn into the snow", s.Drawn, sums},
		{"snow gone", s.Gone, sums},
	} {
		if err := f.in.Check(f.name+" of the state of "+s.Date.Format(time.DateOnly), f.x); err != nil {
			return err
		}
	}
	return nil
}

// begin returns the sheet before the first day: open water at the mean of the
// first week.
func begin(days []Day) sheet {
	var s sheet
	for i := range min(len(days), 7) {
		s.water += (days[i].Mean - s.water) / float64(i+1)
	}
	s.skin = s.water
	s.water = max(0, s.water)
	return s
}

func (m *Model) run(s sheet, days []Day) ([]State, error) {
	dst := make([]State, len(days))
	if len(days) == 0 {
		return dst, nil
	}
	c := calendarOf(days[0].Date)
	for i := range days {
		d := &days[i]
		if err := d.check(); err != nil {
			return nil, err
		}
		if !c.is(d.Date) {
			return nil, order(d.Date, "does not follow the day before")
		}
		m.c.step(&s, d, m.sun[c.yearDay])
		m.state(&dst[i], &s, d)
		c.next()
	}
	return dst, nil
}

// daily counts days, since taking dates apart costs more than the ice.
type daily struct {
	midnight      time.Time // UTC
	number        int
	yearDay, last int
}

func calendarOf(t time.Time) daily {
	c := daily{number: number(t)}
	c.midnight = dateOf(c.number)
	c.year()
	return c
}

// is reports whether t lies on the day.
func (c *daily) is(t time.Time) bool {
	return t == c.midnight || number(t) == c.number
}

func (c *daily) next() {
	c.midnight = c.midnight.Add(24 * time.Hour)
	c.number++
	if c.yearDay++; c.yearDay > c.last {
		c.year()
	}
}

func (c *daily) year() {
	c.yearDay = c.midnight.YearDay()
	c.last = time.Date(c.midnight.Year(), time.December, 31, 0, 0, 0, 0, time.UTC).YearDay()
}

func order(t time.Time, why string) error {
	return fmt.Errorf("%s: %w", t.Format(time.DateOnly), &measure.Error{Field: "date", Text: t.Format(time.DateOnly), Class: measure.ErrSyntax, Why: why})
}

// state fills in what is seen of a sheet.
func (m *Model) state(o *State, s *sheet, d *Day) {
	o.Date, o.Forecast = d.Date, d.Forecast
	o.rest = rest{s.crust, s.mass, s.resist, s.skin, s.frost}
	o.Thaw = d.Mean >= 0 || d.Has&HasRange != 0 && d.High >= 0
	if !s.ice {
		o.Water = s.water
		return
	}
	o.Ice, o.Clear, o.White, o.Slush, o.Snow = true, s.clear, s.white, s.slush, s.depth
	o.Freeboard = ((water-clearIce)*s.clear + (water-whiteIce)*s.white + (water-slush)*s.slush - s.mass) / water
	left := s.firm()
	o.Rot, o.Strength, o.Effective = s.rot, left*left, (s.clear+s.white/2)*left
	o.FrostDays = s.frozen
	o.Fell, o.Drawn, o.Gone = s.fell, s.drawn, s.gone
}

// firm returns the root of the strength that rot leaves, 1 - √(rot/0.5).
func (s *sheet) firm() float64 {
	if s.rot == 0 {
		return 1
	}
	return max(0, 1-math.Sqrt(s.rot/rotten))
}

// effective returns the effective thickness in m.
func (s *sheet) effective() float64 { return (s.clear + s.white/2) * s.firm() }

// A Winter is one season of a lake. A date that is not known is the zero time.
type Winter struct {
	Year      int       // in which the winter began
	On, Out   time.Time // first day of lasting ice, first open day after the last ice
	IceDays   int       // days with ice, open spells left out
	Thickest  float64   // m, clear and white ice
	ThickDay  time.Time
	WhiteMost float64 // m
}

// lasting is how many days ice must stay to count as ice-on: our choice; an
// observer, too, writes down no ice that is gone the next day.
const lasting = 3

// Winters gathers the states of a run by winter; which day counts as ice-on is our
// choice. A winter whose ice was there
// on the first day or still is on the last has no date there.
func (m *Model) Winters(states []State) []Winter {
	var out []Winter
	spell := 0
	for i := range states {
		s := &states[i]
		y := m.lake.year(number(s.Date))
		if len(out) == 0 || out[len(out)-1].Year != y {
			out = append(out, Winter{Year: y})
			spell = 0
		}
		w := &out[len(out)-1]
		if !s.Ice {
			if spell > 0 && w.Out.IsZero() {
				w.Out = s.Date
			}
			spell = 0
			continue
		}
		spell++
		w.IceDays++
		w.Out = time.Time{}
		if spell == lasting && w.On.IsZero() && i >= lasting {
			w.On = states[i-lasting+1].Date
		}
		if t := s.Total(); t > w.Thickest {
			w.Thickest, w.ThickDay = t, s.Date
		}
		w.WhiteMost = max(w.WhiteMost, s.White)
	}
	return out
}
