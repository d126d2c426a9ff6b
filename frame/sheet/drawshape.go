package sheet

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// plan draws the dock from above.
func (g *drawing) plan() (Picture, error) {
	s := g.shape
	p := Plan{
		Units: g.units, Length: s.Length, Width: s.Width, Diagonal: s.Diagonal,
		Ends: [2]string{"near end", "far end"}, Sides: [2]string{"near side", "far side"},
	}
	if s.Err != nil {
		p.Without = "Not all floats and fixed things are drawn: " + measure.RestateError(s.Err, g.units).Error() + "."
	}
	for _, t := range slices.Concat(s.Joists, s.Rims) {
		p.Members = append(p.Members, Rectangle(t))
	}
	for _, t := range s.Stays {
		p.Stays = append(p.Stays, Rectangle(t.Timber))
	}
	p.Along, p.Across = s.Marks, nil
	if !s.Across {
		p.Along, p.Across = nil, s.Marks
	}
	p.Middles = s.Centre
	var along, across []float64 // of floats: those in a bay have their place along the run from it
	for i, f := range s.Floats {
		p.Floats = append(p.Floats, Afloat{Name: strconv.Itoa(i + 1), X: f.X, Y: f.Y, Long: f.Long, Broad: f.Broad})
		if f.Bay == 0 || !s.Across {
			along = append(along, f.X)
		}
		if f.Bay == 0 || s.Across {
			across = append(across, f.Y)
		}
	}
	p.FloatsAlong, p.FloatsAcross = rising(along), rising(across)
	for _, t := range s.Fixed {
		p.Things = append(p.Things, Thing(t))
	}
	for _, t := range s.Cleats {
		p.Things = append(p.Things, Thing{"cleat of " + t.Name, t.X, t.Y})
	}
	return p.Draw()
}

// rising returns places in order, those apart that a tape tells apart.
func rising(xs []float64) []float64 {
	slices.Sort(xs)
	return slices.CompactFunc(xs, func(a, b float64) bool { return math.Abs(a-b) < measure.Inch/32 })
}

// standing says who stands where.
func (g *drawing) standing() string {
	return fmt.Sprintf("%s at the %s", people(g.crowd.People), g.crowd.Edge)
}

// section cuts the float that lies deepest under the crowd, or the first.
func (g *drawing) section() (Picture, error) {
	s := g.shape
	if len(s.Floats) == 0 {
		return Picture{}, s.Err
	}
	i, empty, noWater := 0, float.State{}, g.noCrew
	if noWater == nil {
		if i = g.crowd.Deep; i >= len(s.Floats) {
			i = 0
		}
		empty, noWater = g.dock.Empty()
	}
	f := s.Floats[i]
	at, broad, span := f.X, f.Long, func(t dock.Timber) (lo, hi float64) { return t.X0, t.X1 }
	if !s.Across {
		at, broad, span = f.Y, f.Broad, func(t dock.Timber) (lo, hi float64) { return t.Y0, t.Y1 }
	}
	bay := f.Bay
	for bay = max(1, bay); f.Bay == 0 && bay < len(s.Joists)-1; bay++ {
		if lo, _ := span(s.Joists[bay]); lo > at {
			break
		}
	}
	_, left := span(s.Joists[bay-1])
	right, far := span(s.Joists[bay])
	middle := (left + right) / 2
	c := Section{
		Units: g.units, Clear: right - left, JoistThick: far - right, JoistDepth: s.Depth, Deck: s.Deck, Rim: g.hangs(),
		Broad: broad, High: f.High, Round: f.Drum && f.Along != s.Across, Middle: f.Z, Aside: at - middle,
		Name: f.Name, Bears: "bears: " + f.Bears, Where: fmt.Sprintf("Cut through float %d, between joists %d and %d.", i+1, bay, bay+1),
	}
	for k, t := range s.Joists {
		lo, hi := span(t)
		if k != bay-1 && k != bay && hi > at-broad/2 && lo < at+broad/2 {
			c.Others = append(c.Others, (lo+hi)/2-middle)
		}
	}
	if noWater != nil {
		c.Where += " Where the water stands is not known: " + measure.RestateError(noWater, g.units).Error() + "."
		return c.Draw()
	}
	c.Water = append(c.Water, Waterline{"nobody aboard", g.water(empty, f)})
	if g.crowd.Err == nil {
		c.Water = append(c.Water, Waterline{g.standing(), g.water(g.crowd.Rest, f)})
		c.Where += " It lies deepest with " + g.standing() + "."
	} else {
		c.Where += " With " + g.standing() + " the dock finds no rest: " + measure.RestateError(g.crowd.Err, g.units).Error() + "."
	}
	return c.Draw()
}

// hangs returns how far the rims reach below the joists.
func (g *drawing) hangs() float64 { return max(0, g.shape.RimDepth-g.shape.Depth) }

// rims returns the thickness of one side's rim, all plies.
func (g *drawing) rims() float64 {
	r := g.shape.Rims[0]
	ply := min(r.X1-r.X0, r.Y1-r.Y0)
	return ply * float64(len(g.shape.Rims)/2)
}

// water returns how high the water stands over the joists' underside at a float.
func (g *drawing) water(s float.State, f dock.Lying) float64 {
	at := r3.Vec{X: f.X - g.shape.Length/2, Y: f.Y - g.shape.Width/2}
	return -s.Height(at) / s.Up.Z
}

// heeled draws the dock from the end, or from the side where the crowd at an end
// tilts it more.
func (g *drawing) heeled() (Picture, error) {
	if g.noCrew != nil {
		return Picture{}, g.noCrew
	}
	c, s := g.crowd, g.shape
	if c.Err != nil {
		return Picture{}, fmt.Errorf("with %s the dock finds no rest: %w", g.standing(), c.Err)
	}
	e := Heeled{Units: g.units, Width: s.Width, Depth: s.Depth, Deck: s.Deck, Rim: g.hangs(), Heel: -math.Asin(c.Rest.Up.Y), People: []float64{c.Y}, Sides: [2]string{"near side", "far side"}}
	e.Load = fmt.Sprintf("%s, %s", g.standing(), measure.Mass.Format(c.Mass, g.units))
	if c.People > 1 {
		e.Load += ", one behind the other"
	}
	// Whoever has the near side on his left looks from the far end, and from the near side
	// where he has the near end there. The heights are those of the end that lies lower.
	x, y := math.Copysign(s.Length/2, c.Rest.Trim), 0.0
	e.From = "Seen from the far end; heights at the " + [2]string{"far end", "near end"}[lower(c.Rest.Trim)]
	if e.Along = c.Edge == "near end" || c.Edge == "far end"; e.Along {
		e.Width, e.Heel, e.People, e.Sides = s.Length, -math.Asin(c.Rest.Up.X), []float64{c.X}, [2]string{"near end", "far end"}
		x, y = 0, math.Copysign(s.Width/2, c.Rest.Heel)
		e.From = "Seen from the near side; heights at the " + [2]string{"far side", "near side"}[lower(c.Rest.Heel)]
	}
	if e.Along != s.Across { // the rims run away from who looks
		e.Broad = g.rims()
	}
	e.Height = c.Rest.Height(r3.Vec{X: x, Y: y})
	for _, f := range s.Floats {
		w := endwise(s, f, e.Along)
		alike := func(o Endwise) bool {
			return o.Round == w.Round && math.Abs(o.Y-w.Y) < 1e-3 && math.Abs(o.Z-w.Z) < 1e-3 && math.Abs(o.Broad-w.Broad) < 1e-3 && math.Abs(o.High-w.High) < 1e-3
		}
		if !slices.ContainsFunc(e.Floats, alike) {
			e.Floats = append(e.Floats, w)
		}
	}
	return e.Draw()
}

// lower returns 1 where an angle puts the near end or side down, for which the place in
// [drawing.heeled] is negative.
func lower(angle float64) int {
	if math.Signbit(angle) {
		return 1
	}
	return 0
}

// endwise returns a float as it is seen from the dock's end or, along, from its side.
func endwise(s *dock.Shape, f dock.Lying, along bool) Endwise {
	if along {
		return Endwise{Y: f.X - s.Length/2, Z: f.Z, Broad: f.Long, High: f.High, Round: f.Drum && !f.Along}
	}
	return Endwise{Y: f.Y - s.Width/2, Z: f.Z, Broad: f.Broad, High: f.High, Round: f.Drum && f.Along}
}

// lines draws the dock in its lines.
func (g *drawing) lines() (Picture, error) {
	l, err := g.dock.Lines()
	if err != nil {
		return Picture{}, err
	}
	out := Lines{Units: g.units, Length: g.shape.Length, Deck: l.Deck, Draft: l.Draft, Bed: l.Bed}
	const same = 1e-3 // m: levels that no drawing tells apart
	if l.Low < -same {
		out.Levels = append(out.Levels, Level{"low water", l.Low})
	}
	out.Levels = append(out.Levels, Level{Name: "today"})
	if l.High > same {
		out.Levels = append(out.Levels, Level{"high water", l.High})
	}
	for _, t := range l.Leads {
		out.Ties = append(out.Ties, Tie{
			Name: t.Name, X: t.Cleat[0], Y: t.Cleat[1], Over: t.Cleat[2], FarX: t.Foot[0], FarY: t.Foot[1], FarZ: t.Foot[2], Made: t.Made,
		})
	}
	return out.Draw()
}
