package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Situation is one thing that the dock meets. Ends and sides are near and far as
// seen from where the tape hooks on.
type Situation struct {
	Name     string
	Why      string          // it is looked at
	Duration lumber.Duration // of its shortest load, over the dock's life

	inputs  []string // of the plan that make this situation and few others
	presses []press  // all but the frame's own weight
	lake    lake
	ground  ground // nil: it floats
	pulls   []pull // in the frame's plane, where nothing else is looked at
	bare    bool   // nobody aboard
	edge    bool   // everyone at a corner or at the middle of an edge
	level   bool   // on level ground
	uniform bool   // the uniform load over all of it
	swings  bool   // a trough that follows the crest before it
}

var (
	ends  = [2]string{"near end", "far end"}
	sides = [2]string{"near side", "far side"}
)

// A scene knows what every situation shares.
type scene struct {
	*Dock
	fixed []press // what is fixed to the deck
	deck  press
	crew  press // everyone, spread over the deck
	snow  press
}

// situations lists what the dock meets, from summer to spring. What they rest on is
// known.
func (d *Dock) situations() ([]Situation, error) {
	deck, err := d.deck()
	if err != nil {
		return nil, err
	}
	l := &d.plan.Loads
	s := scene{
		Dock: d, fixed: d.fixed(), deck: deck,
		crew: d.everywhere(d.people()*measure.Gravity, d.deckTop()+l.Centre.Value),
		snow: d.everywhere(l.Snow.Value*d.length*d.width, d.deckTop()),
	}
	return slices.Concat(s.afloat(), s.crowds(), s.edges(), s.leaks(), s.waves(), s.standing(), s.caught(), s.sideways()), nil
}

// decked returns a situation of the finished dock under more loads.
func (s *scene) decked(name, why string, t lumber.Duration, more ...press) Situation {
	return Situation{Name: name, Why: why, Duration: t, presses: slices.Concat(s.fixed, []press{s.deck}, more)}
}

// by says which inputs make the situation.
func (s Situation) by(inputs ...string) Situation {
	s.inputs = inputs
	return s
}

func (s *scene) afloat() []Situation {
	half := s.snow
	half.force /= 2
	empty := s.decked("afloat, nobody aboard", "it lasts for years", lumber.Permanent)
	empty.bare = true
	return []Situation{
		empty,
		s.decked("afloat under half of the winter's snow", "snow falls before the lake freezes", lumber.Snow, half).by("loads.snow"),
	}
}

// crowds is the uniform load over all, halves and quarters.
func (s *scene) crowds() []Situation {
	q, z := s.plan.Loads.Flotation.Value, s.deckTop()+s.plan.Loads.Centre.Value
	load := func(name string, along, across [2]float64) Situation { // as shares
		p := press{
			run: [2]float64{along[0] * s.length, along[1] * s.length}, reach: [2]float64{across[0] * s.width, across[1] * s.width},
			force: q * s.length * s.width * (along[1] - along[0]) * (across[1] - across[0]), height: z,
		}
		if !s.across {
			p.run, p.reach = p.reach, p.run
		}
		return s.decked("afloat, uniform load over "+name, "a crowd stands where it likes", lumber.TenYears, p)
	}
	all, halves := [2]float64{0, 1}, [2][2]float64{{0, 0.5}, {0.5, 1}}
	out := []Situation{load("all of it", all, all)}
	out[0].uniform = true
	for i, end := range ends {
		out = append(out, load("the half at the "+end, halves[i], all), load("the half at the "+sides[i], all, halves[i]))
		for j, side := range sides {
			out = append(out, load("the quarter at the "+end+" and "+side, halves[i], halves[j]))
		}
	}
	return out
}

// edges is everyone at each corner and mid-edge, and one on each ladder.
func (s *scene) edges() []Situation {
	l := &s.plan.Loads
	x, y, z := s.length/2-l.FromEdge.Value, s.width/2-l.FromEdge.Value, s.deckTop()+l.Centre.Value
	at := func(name string, x, y float64) Situation {
		out := s.decked("afloat, everyone at the "+name, "everyone goes to see", lumber.TenYears, s.spot(x, y, s.people(), z))
		out.edge = true
		return out
	}
	var out []Situation
	for i, end := range ends {
		out = append(out, at("middle of the "+end, [2]float64{-x, x}[i], 0), at("middle of the "+sides[i], 0, [2]float64{-y, y}[i]))
		for j, side := range sides {
			out = append(out, at("corner of the "+end+" and "+side, [2]float64{-x, x}[i], [2]float64{-y, y}[j]))
		}
	}
	for i := range s.plan.Weights {
		w := &s.plan.Weights[i]
		if w.Ladder.Value == "yes" {
			out = append(out, s.decked("afloat, a swimmer on the "+w.Name.Value, "his whole weight hangs on it", lumber.TenYears,
				s.spot(w.Along.Value-s.length/2, w.Across.Value-s.width/2, s.heaviest(), s.deckTop())))
		}
	}
	return out
}

// leaks is each float open to the lake.
func (s *scene) leaks() []Situation {
	out := make([]Situation, len(s.floats))
	for i := range s.floats {
		out[i] = s.decked("afloat with everyone spread, full of water: "+s.at(i), "a leak is noticed late", lumber.TenYears, s.crew)
		out[i].lake.lost = i + 1
	}
	return out
}

// waves is a crest and a trough at the middle of long waves that stand still, from
// an end, a side and along both diagonals.
func (s *scene) waves() []Situation {
	h := s.plan.Site.WaveHeight.Value
	// Deep water: L = gT²/2π.
	w := 2 * math.Pi / (s.plan.Site.TenCrests.Value / 10)
	k := w * w / measure.Gravity
	var out []Situation
	diagonal := math.Atan2(s.width, s.length)
	for i, by := range [4]float64{0, math.Pi / 2, diagonal, -diagonal} {
		from := [4]string{"an end", "a side", "the " + ends[0] + " and " + sides[0], "the " + ends[0] + " and " + sides[1]}[i]
		sin, cos := math.Sincos(by)
		for j, what := range [2]string{"crest", "trough"} {
			sit := s.decked(fmt.Sprintf("waves of %s from %s, %s in the middle, everyone spread", measure.Length.Format(h, s.system()), from, what),
				"a wave lifts some floats and leaves others", lumber.TenMinutes, s.crew)
			half := [2]float64{h / 2, -h / 2}[j]
			sit.swings = j == 1
			sit.inputs = []string{"site.wave_height", "site.ten_crests"}
			sit.lake.level = func(x, y float64) float64 { return half * math.Cos(k*(x*cos+y*sin)) }
			out = append(out, sit)
		}
	}
	return out
}

// standing is the dock on ice or on shore.
func (s *scene) standing() []Situation {
	l := &s.plan.Loads
	uneven := measure.Length.Format(l.Uneven.Value, s.system())
	firm := func(sit Situation, g ground) Situation {
		sit.ground = g
		return sit
	}
	out := []Situation{firm(s.decked("on the ice under snow", "it stands there for weeks", lumber.Snow, s.snow), s.onGround(nil)).by("loads.snow")}
	out[0].level = true
	for i := range 2 {
		deck, crew := s.deck, s.crew
		half := s.run() / 2
		deck.run = [2]float64{float64(i) * half, float64(i+1) * half}
		crew.run, deck.force = deck.run, deck.force/2
		name := ends[i]
		if !s.across {
			name = sides[i]
		}
		out = append(out, Situation{
			Name: "on the ice, decked at the " + name + " only, the crew there", Why: "boards go on from one end", Duration: lumber.SevenDays,
			presses: slices.Concat(s.fixed, []press{deck, crew}), ground: s.onGround(nil),
		})
	}
	for i := range s.floats {
		sit := s.decked(fmt.Sprintf("on ice or blocks under snow, %s low: %s", uneven, s.at(i)), "ice and ground are never level", lumber.Snow, s.snow)
		out = append(out, firm(sit, s.onGround(func(m int) float64 {
			if m == i {
				return -l.Uneven.Value
			}
			return 0
		})).by("loads.snow", "loads.uneven"))
	}
	for i, end := range ends {
		for j, side := range sides {
			sit := s.decked(fmt.Sprintf("pried up %s at the corner of the %s and %s", measure.Length.Format(l.Pried.Value, s.system()), end, side),
				"to free it from the ice or to level it", lumber.TenMinutes)
			sit.ground = s.pried(i, j, l.Pried.Value)
			sit.inputs = []string{"loads.pried"}
			out = append(out, sit)
		}
	}
	hump := 3 * l.Uneven.Value
	for i, way := range [2]string{"lengthwise", "sideways"} {
		far := s.farthest(i == 1)
		// slope is 0 in the middle and 1 at the outermost floats.
		slope := func(m int) float64 { return math.Abs([2]float64{s.floats[m].x, s.floats[m].y}[i]) / far }
		out = append(out,
			firm(s.decked("dragged "+way+" over a hump, on its middle", "skids cross the shore's edge", lumber.SevenDays),
				s.onGround(func(m int) float64 { return -hump * slope(m) })).by("loads.uneven"),
			firm(s.decked("dragged "+way+" over a hollow, on its ends", "skids cross a hollow", lumber.SevenDays),
				s.onGround(func(m int) float64 { return hump * slope(m) })).by("loads.uneven"))
	}
	return out
}

// caught is the dock afloat with the floats of one end or side held, by ice or by
// the lake's bed, as the water drops.
func (s *scene) caught() []Situation {
	drop := s.plan.Site.IceDrop.Value
	by := measure.Length.Format(drop, s.system())
	var out []Situation
	for i, edge := range [4]string{ends[0], ends[1], sides[0], sides[1]} {
		ice := s.decked(fmt.Sprintf("frozen in at the %s, the water %s lower", edge, by), "ice holds on and the lake does not wait", lumber.SevenDays)
		ice.lake.level, ice.ground = dropped(drop), s.held(i, drop, true)
		bed := s.decked(fmt.Sprintf("aground at the %s, the water %s lower, everyone spread", edge, by), "the lake falls in August", lumber.TenYears, s.crew)
		bed.lake.level, bed.ground = dropped(drop), s.held(i, drop, false)
		out = append(out, ice.by("site.ice_drop"), bed.by("site.ice_drop"))
	}
	return out
}

func dropped(by float64) func(x, y float64) float64 {
	return func(x, y float64) float64 { return -by }
}

// people returns the mass of everyone.
func (d *Dock) people() float64 {
	mass := 0.0
	for i := range d.plan.People {
		mass += float64(d.plan.People[i].Count.Value) * d.plan.People[i].Mass.Value
	}
	return mass
}

// heaviest returns the mass of the heaviest one.
func (d *Dock) heaviest() float64 {
	mass := 0.0
	for i := range d.plan.People {
		mass = max(mass, d.plan.People[i].Mass.Value)
	}
	return mass
}

// farthest returns how far from the middle the outermost float lies, along or across.
func (d *Dock) farthest(across bool) float64 {
	far := 0.0
	for _, m := range d.floats {
		if across {
			far = max(far, math.Abs(m.y))
		} else {
			far = max(far, math.Abs(m.x))
		}
	}
	return max(far, least)
}
