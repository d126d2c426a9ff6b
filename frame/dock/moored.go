package dock

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

var (
	srcUser = &measure.Source{Title: "as entered in the plan, by whoever tested or made it", Status: measure.Quoted}
	srcLoss = &measure.Source{Title: "a dock must be held with any one line lost", Status: measure.OwnChoice}
	srcNone = &measure.Source{Title: "what is not there carries nothing", Status: measure.Exact}
	srcTaut = &measure.Source{Title: "a line must be neither slack nor taut at any level of the year", Status: measure.CommonPractice}
	srcBed  = &measure.Source{Title: "a dock that is to float keeps off the bottom", Status: measure.Exact}
)

// steepestShore is how far above the level a pull on a tree, post or bolt may come
// before a strength given for it says nothing, rad.
const steepestShore = 25 * degree

// person is what one standing person shows the wind, m².
const person = 0.7

// A hold is a plan's mooring with the dock afloat in it.
type hold struct {
	moor.Mooring
	wind    moor.Weather // without waves
	fetches moor.Fetches
	seen    moor.Sea  // height 0 is none
	levels  []float64 // lowest, middle and highest, over that when measured
	deck    float64   // m, of the deck's lowest corner over the water
	draft   float64   // m, nobody aboard
	notes   []string
}

func notKnown(field, want string) error {
	return &measure.Error{Field: field, Class: measure.ErrUnknown, Want: want}
}

// hold returns the dock in its mooring, and what that rests on.
func (d *Dock) hold() (*hold, rests, error) {
	m, site := &d.plan.Mooring, &d.plan.Site
	base, rs, err := d.platform()
	rs = append(rs, d.stormRests()...)
	if len(m.Lines) == 0 {
		return nil, dedupe(rs), notKnown("mooring.lines",
			"each line's corner and where it ends, its pieces with kind, size, length by tape and mass on a scale, its cleat and shackle")
	}
	rs = append(rs, on(site.LevelLow), on(site.LevelHigh))
	for i := range m.Lines {
		rs = append(rs, lineRests(&m.Lines[i])...)
	}
	rs = dedupe(rs)
	if missing := rs.err(); missing != nil {
		err = missing
	}
	if err != nil {
		return nil, rs, err
	}
	h, err := d.storm(settle(base, loading{}))
	if err != nil {
		return nil, rs, err
	}
	if err := d.aground(h.draft); err != nil {
		return nil, rs, err
	}
	low, high := site.LevelLow.Value, site.LevelHigh.Value
	if !(low <= high) {
		return nil, rs, &measure.Error{Field: site.LevelHigh.Path, Text: site.LevelHigh.Text, Class: measure.ErrRange, Want: "a highest level over the lowest"}
	}
	h.levels = []float64{low, low + (high-low)/2, high}
	for i := range m.Lines {
		t, more, err := d.tie(&m.Lines[i], i, h.deck)
		rs = dedupe(append(rs, more...))
		if err == nil {
			err = more.err()
		}
		if err != nil {
			return nil, rs, err
		}
		h.Ties = append(h.Ties, t)
	}
	return h, rs, nil
}

// stormRests is what the loads of wind and water rest on.
func (d *Dock) stormRests() rests {
	m, site := &d.plan.Mooring, &d.plan.Site
	rs := rests{on(m.Wind), on(m.WindMean), on(m.WindHeight), on(m.Current), on(site.WaveHeight), on(site.TenCrests), on(site.Depth)}
	if m.Current.Value > 0 {
		rs = append(rs, on(m.Set), on(m.Bearing))
	}
	fetches, given := m.Fetch.All(), 0
	for _, f := range fetches {
		if f.Known == measure.Measured {
			given++
		}
	}
	if given > 0 {
		rs = append(rs, on(m.Bearing))
		for _, f := range fetches {
			rs = append(rs, on(f))
		}
	}
	for i := range m.Above {
		rs = append(rs, on(m.Above[i].End), on(m.Above[i].Side), on(m.Above[i].Height))
	}
	if len(d.plan.People) == 0 {
		rs = append(rs, rest{path: "people", missing: true})
	}
	for i := range d.plan.People {
		rs = append(rs, on(d.plan.People[i].Count))
	}
	return rs
}

// storm returns the loads of wind and water on the dock as it floats.
func (d *Dock) storm(fl floating) (*hold, error) {
	if fl.err != nil {
		return nil, fl.err
	}
	u, err := fl.state.Unit(fl.deepest)
	if err != nil {
		return nil, err
	}
	m, site := &d.plan.Mooring, &d.plan.Site
	h := &hold{deck: fl.edge, draft: u.Draft}
	if !(h.deck > 0) {
		return nil, &measure.Error{Field: "deck above the water", Kind: measure.Length, Value: h.deck, Class: measure.ErrRange, Want: "a deck that floats dry"}
	}
	north := 0.0
	if plan.Has(m.Bearing) {
		north = m.Bearing.Value
	}
	h.wind = moor.Weather{
		Wind:  moor.Wind{Speed: m.Wind.Value, Averaging: m.WindMean.Value, Height: m.WindHeight.Value},
		Above: []moor.Face{{Name: "frame and floats", End: d.width * h.deck, Side: d.length * h.deck, Height: h.deck / 2}},
		North: north, Depth: site.Depth.Value, Length: d.length, Breadth: d.width, Draft: h.draft, Freeboard: h.deck,
	}
	people := 0.0
	for i := range d.plan.People {
		people += float64(d.plan.People[i].Count.Value)
	}
	h.wind.Above = append(h.wind.Above, moor.Face{Name: "people", End: people * person, Side: people * person, Height: h.deck + 0.9})
	for i := range m.Above {
		w := &m.Above[i]
		h.wind.Above = append(h.wind.Above, moor.Face{Name: w.Name.Value, End: w.End.Value, Side: w.Side.Value, Height: w.Height.Value})
	}
	if len(m.Above) == 0 {
		h.notes = append(h.notes, "wind on the frame, the floats and everyone standing; boats alongside and sheds count once they stand in mooring.above")
	}
	if m.Current.Value > 0 {
		h.wind.Current = moor.Current{Speed: m.Current.Value, Depth: site.Depth.Value, Draft: h.draft}
		h.wind.Set = north - m.Set.Value
		h.wind.Below = []moor.Face{{Name: "floats", End: d.width * h.draft, Side: d.length * h.draft}}
	}
	for i, f := range m.Fetch.All() {
		if f.Known == measure.Measured {
			h.fetches[i] = f.Value
		}
	}
	if site.WaveHeight.Value > 0 {
		h.seen, err = moor.Seen(site.WaveHeight.Value, site.TenCrests.Value)
	}
	return h, err
}

// load returns the storm: wind, current, and the greater of the waves seen and those
// that the wind raises; with crests their whole push, else the steady drift.
func (h *hold) load(crests bool) moor.Storm {
	return func(θ float64) (moor.Load, error) {
		sum, err := h.wind.Load(θ)
		if err != nil {
			return sum, err
		}
		blown := h.wind
		blown.Fetches = h.fetches
		raised, err := blown.Sea(θ)
		if err != nil {
			return sum, err
		}
		most := 0.0
		for _, sea := range []moor.Sea{h.seen, raised} {
			if sea.Height == 0 {
				continue
			}
			if crests {
				if sea, err = sea.Highest(h.wind.Depth); err != nil {
					return sum, err
				}
			}
			push, drift, err := sea.Push(h.wind.Depth, h.draft, h.deck)
			if err != nil {
				return sum, err
			}
			if !crests {
				push = drift
			}
			most = max(most, push)
		}
		sin, cos := math.Sincos(θ)
		push := most * (h.wind.Breadth*math.Abs(cos) + h.wind.Length*math.Abs(sin))
		return sum.Plus(moor.Load{X: push * cos, Y: push * sin}), nil
	}
}

func lineRests(l *plan.Line) rests {
	rs := rests{on(l.To), on(l.Shackle)}
	switch {
	case plan.Has(l.Along) && plan.Has(l.Across):
		rs = append(rs, on(l.Along), on(l.Across))
	default:
		rs = append(rs, on(l.Corner))
	}
	if len(l.Pieces) == 0 {
		rs = append(rs, rest{path: l.Name.Path + ", pieces", missing: true})
	}
	for i := range l.Pieces {
		p := &l.Pieces[i]
		rs = append(rs, on(p.Kind), on(p.Size), on(p.Length), on(p.Mass), on(p.End), on(p.Stretch))
	}
	return rs
}

// tie builds one line, and returns what its ground end rests on.
func (d *Dock) tie(l *plan.Line, i int, deck float64) (moor.Tie, rests, error) {
	t := moor.Tie{Name: lineName(l, i), Height: deck}
	x, y := d.length/2, d.width/2
	if strings.HasPrefix(l.Corner.Value, "near end") {
		x = -x
	}
	if strings.HasSuffix(l.Corner.Value, "near side") {
		y = -y
	}
	if plan.Has(l.Along) && plan.Has(l.Across) {
		x, y = l.Along.Value-d.length/2, l.Across.Value-d.width/2
	}
	t.At = [2]float64{x, y}
	t.Fitting = moor.Gear{Name: "cleat", Kind: "cleat", Source: srcUser}
	if l.Cleat.Known == measure.Measured {
		t.Fitting.Break = l.Cleat.Value
	}
	rs, err := d.foot(&t, l)
	if err != nil {
		return t, rs, err
	}
	if l.Shackle.Value != "none" {
		g, err := moor.Lookup("shackle", l.Shackle.Value)
		if err != nil {
			return t, rs, err
		}
		t.Links = append(t.Links, g)
	}
	for k := range l.Pieces {
		p, err := lineOf(&l.Pieces[k], t.Line.Shore)
		if err != nil {
			return t, rs, err
		}
		t.Line.Pieces = append(t.Line.Pieces, p)
	}
	return t, rs, nil
}

func lineName(l *plan.Line, i int) string { return called(l.Name, fmt.Sprintf("line %d", i+1)) }

// foot finds what a line runs to.
func (d *Dock) foot(t *moor.Tie, l *plan.Line) (rests, error) {
	var names []string
	set := func(along, across plan.Quantity, z float64) {
		t.Foot, t.FootZ = [2]float64{along.Value - d.length/2, across.Value - d.width/2}, z
	}
	for i := range d.plan.Site.Shore {
		p := &d.plan.Site.Shore[i]
		names = append(names, p.Name.Value)
		if p.Name.Value == "" || p.Name.Value != l.To.Value {
			continue
		}
		set(p.Along, p.Across, p.Above.Value)
		t.Line.Shore = true
		g := moor.Rated{Name: p.Name.Value, Steepest: steepestShore, Source: srcUser}
		if p.Strength.Known == measure.Measured {
			g.Hold = p.Strength.Value
		}
		t.Ground = g
		return rests{on(p.Along), on(p.Across), on(p.Above)}, nil
	}
	for i := range d.plan.Mooring.Anchors {
		a := &d.plan.Mooring.Anchors[i]
		names = append(names, a.Name.Value)
		if a.Name.Value == "" || a.Name.Value != l.To.Value {
			continue
		}
		set(a.Along, a.Across, -a.Depth.Value)
		rs := rests{on(a.Along), on(a.Across), on(a.Depth), on(a.Kind)}
		switch {
		case a.Kind.Value == "tested":
			g := moor.Rated{Name: a.Name.Value, Source: srcUser}
			if a.Holding.Known == measure.Measured {
				g.Hold = a.Holding.Value
			}
			if plan.Has(a.Steepest) {
				g.Steepest = a.Steepest.Value
			}
			t.Ground = g
			return append(rs, on(a.Steepest)), nil
		default:
			t.Ground = moor.DeadWeight{
				Mass: a.Mass.Value, Bottom: a.Bottom.Value,
				Density: map[string]float64{"concrete": 2300, "granite": 2650, "steel": 7850}[a.Material.Value],
			}
			return append(rs, on(a.Mass), on(a.Material), on(a.Bottom)), nil
		}
	}
	return nil, &measure.Error{Field: l.To.Path, Text: l.To.Text, Class: measure.ErrName, Want: "a shore point or an anchor of the plan: " + strings.Join(names, ", ")}
}

// dense are densities of what lines are made of, kg/m³ (common practice); rope
// that floats counts as weightless.
func dense(kind string) float64 {
	for _, m := range []struct {
		part string
		kg   float64
	}{{"chain", 7850}, {"wire", 7850}, {"nylon", 1140}, {"polyolefin", 0}, {"polypropylene", 0}, {"polyester", 1380}, {"manila", 1500}} {
		if strings.Contains(kind, m.part) {
			return m.kg
		}
	}
	return 0
}

// gear looks up a rope, chain or wire with its end.
func gear(kind, size, end string) (moor.Gear, error) {
	g, err := moor.Lookup(kind, size)
	if err != nil || strings.HasPrefix(kind, "chain") {
		return g, err
	}
	of := "end of rope"
	if strings.HasPrefix(kind, "wire") {
		of = "end of wire rope"
		if end == "knot" {
			end = "bend without thimble"
		}
	}
	f, err := moor.Factor(of, end)
	g.Ends = []measure.Factor{f}
	return g, err
}

// lineOf builds one piece of a line, in air or in water.
func lineOf(p *plan.LinePiece, air bool) (moor.Piece, error) {
	g, err := gear(p.Kind.Value, p.Size.Value, p.End.Value)
	if err != nil {
		return moor.Piece{}, err
	}
	out := moor.Piece{Gear: g, Length: p.Length.Value, Weight: p.Mass.Value * measure.Gravity / p.Length.Value}
	if rho := dense(p.Kind.Value); !air {
		out.Weight *= max(0, 1-waterHeavy/max(rho, 1))
	}
	if p.Stretch.Value > 0 && g.Break > 0 {
		out.Stretch = g.Break / 10 / p.Stretch.Value
	}
	return out, nil
}

// linePull returns the worst pull of a line at a corner, and whose it is: that of the
// mooring, also with one line lost, or loads.cleat where the plan describes none or
// not enough.
func (d *Dock) linePull() (pull float64, whose string) {
	const cleat = "; its pull is loads.cleat"
	h, _, err := d.hold()
	if err != nil {
		if len(d.plan.Mooring.Lines) == 0 {
			return d.plan.Loads.Cleat.Value, cleat
		}
		return d.plan.Loads.Cleat.Value, cleat + ", since the lines are not known: " + measure.RestateError(err, d.system()).Error()
	}
	s, err := d.surveyed(h)
	if err != nil {
		return d.plan.Loads.Cleat.Value, cleat + ", since the lines find no rest: " + measure.RestateError(err, d.system()).Error()
	}
	most := 0.0
	for _, of := range append(slices.Clone(s.lost), *s.whole) {
		for _, e := range of.Ties {
			most = max(most, e.Tension)
		}
	}
	if _, calm := d.blow(); calm != nil && !(most >= d.plan.Loads.Cleat.Value) {
		return d.plan.Loads.Cleat.Value, cleat + ", since the plan's wind is no storm"
	}
	return most, "; its pull is that of the worst line in the plan's storm, also with one lost"
}

// A storm is what it does to a mooring: with all lines, and with each one lost.
type storm struct {
	whole *moor.Survey
	lost  []moor.Survey
}

// survey moors the dock in the storm.
func (h *hold) survey() (*storm, error) {
	s, err := h.Survey(h.levels, h.load(false), 16)
	if err != nil {
		return nil, err
	}
	lost, err := h.Losses([]float64{h.levels[0], h.levels[2]}, h.load(false), 12)
	return &storm{s, lost}, err
}
