package dock

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A Haul is one kind of piece on its way to the lake.
type Haul struct {
	Piece  string
	Size   string
	Count  int     // of them; the hardware is one lot
	Each   float64 // kg; 0 where it is not known
	People int     // to lift one, at 23 kg a person, of what comes in boxes no more than there are; 0 where the weight is not known
	Trips  int     // of all carriers together, or of the sled; 0 where it is not known or cannot be

	Load  float64 // on the sled at a time, kg; 0 without a sled
	Pull  float64 // that draws it up the slope, N; 0 without slope or sled
	Brake float64 // that holds it back on the way down, N, if it slides as on ice; 0 where it needs none
	Crew  int     // to pull or to brake it, at 100 N a person; 0 where it is not known

	Err error // why something is not known, or cannot be carried so
}

// pullOne is what a person pulls or holds on slippery ground, N.
const (
	pullOne = 100.0
	glides  = 0.02 // of the weight: the least a sled on ice drags
)

var srcPull = &measure.Source{
	Title: "US Department of Defense, MIL-STD-1472, human engineering", Edition: "F",
	Locator: "horizontal push and pull, 100 N a person where the ground is slippery", Status: measure.Memory,
}

// carried lists what is carried: pieces of the frame, hardware, floats, the things fixed
// to the dock, anchors and lines.
func (d *Dock) carried() []piece {
	pieces := d.pieces()
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		n := 0
		for _, f := range d.floats {
			if f.set == s {
				n++
			}
		}
		if n > 0 {
			pieces = append(pieces, piece{name: called(s.Name, "float"), what: s.Shape.Value, count: float64(n), each: s.Mass.Value, rests: rests{on(s.Mass)}})
		}
	}
	for i := range d.plan.Weights {
		w := &d.plan.Weights[i]
		pieces = append(pieces, piece{name: called(w.Name, "a weight"), count: 1, each: w.Mass.Value, rests: rests{on(w.Mass)}})
	}
	m := &d.plan.Mooring
	for i := range m.Anchors {
		a := &m.Anchors[i]
		pieces = append(pieces, piece{name: "anchor " + called(a.Name, strconv.Itoa(i+1)), what: a.Kind.Value, count: 1, each: a.Mass.Value, rests: rests{on(a.Mass)}})
	}
	for i := range m.Lines {
		l := &m.Lines[i]
		p := piece{name: called(l.Name, "line "+strconv.Itoa(i+1)), count: 1}
		if !strings.Contains(p.name, "line") {
			p.name = "line " + p.name
		}
		var kinds []string
		for k := range l.Pieces {
			p.each += l.Pieces[k].Mass.Value
			p.rests = append(p.rests, on(l.Pieces[k].Mass))
			if kind := l.Pieces[k].Kind.Value; kind != "" && !slices.Contains(kinds, kind) {
				kinds = append(kinds, kind)
			}
		}
		if p.what = strings.Join(kinds, ", "); len(l.Pieces) == 0 {
			p.rests = rests{{path: strings.TrimSuffix(l.Name.Path, "name") + "pieces", missing: true}}
		}
		pieces = append(pieces, p)
	}
	return pieces
}

// carry lists how all of that is carried.
//
// By hand, as many teams go at once as the carriers make. With a sled, it takes as
// many of a kind as its load allows. The pull up a slope of angle θ is
// W (sin θ + μ cos θ), the brake W (sin θ - 0.02 cos θ).
func (d *Dock) carry() []Haul {
	pieces := d.carried()
	out := make([]Haul, 0, len(pieces))
	for _, p := range pieces {
		out = append(out, d.haul(p))
	}
	return out
}

func (d *Dock) haul(p piece) Haul {
	s := &d.plan.Shop
	h := Haul{Piece: p.name, Size: p.what, Each: p.each, Err: p.why()}
	if p.count > 0 {
		h.Count = int(math.Ceil(p.count - 1e-9))
	}
	if h.Err == nil && !(p.each > 0 && h.Count > 0) {
		h.Err = &measure.Error{Field: p.name, Class: measure.ErrUnknown, Want: "its weight and number"}
	}
	if h.Err == nil {
		h.Err = rests{on(s.Carriers)}.err()
	}
	if h.Err != nil {
		h.Each = 0
		return h
	}
	if p.name == "hardware" { // it comes in boxes
		h.People, h.Size = min(s.Carriers.Value, ceil(p.each/liftOne)), h.Size+", in boxes"
		h.Trips = ceil(p.each / (liftOne * float64(s.Carriers.Value)))
	} else {
		h.People = ceil(p.each / liftOne)
		if teams := s.Carriers.Value / h.People; teams > 0 {
			h.Trips = ceil(float64(h.Count) / float64(teams))
		}
	}
	if plan.Has(s.Sled) {
		d.sled(&h, p.name == "hardware")
	} else if h.Trips == 0 {
		h.Err = &measure.Error{
			Field: "people who carry", Value: float64(s.Carriers.Value), Class: measure.ErrRange,
			Range: measure.Range{Lo: float64(h.People), Hi: math.Inf(1), Source: srcLift},
		}
	}
	return h
}

// sled loads the sled with pieces of one kind.
func (d *Dock) sled(h *Haul, boxes bool) {
	s := &d.plan.Shop
	n := int(math.Min(float64(h.Count), s.Sled.Value/h.Each+1e-9))
	switch {
	case boxes:
		h.Trips = ceil(h.Each / s.Sled.Value)
		h.Load = math.Min(h.Each, s.Sled.Value)
	case n == 0:
		h.Trips = 0
		h.Err = &measure.Error{
			Field: h.Piece, Kind: measure.Mass, Value: h.Each, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Mass, Hi: s.Sled.Value, Source: &measure.Source{Title: "the sled's load", Status: measure.OwnChoice}},
		}
		return
	default:
		h.Trips = ceil(float64(h.Count) / float64(n))
		h.Load = float64(n) * h.Each
	}
	if rs := (rests{on(d.plan.Site.Slope), on(s.Drag)}); rs.err() != nil {
		h.Err = rs.err()
		return
	}
	sin, cos := math.Sincos(math.Atan(d.plan.Site.Slope.Value))
	weight := h.Load * measure.Gravity
	h.Pull = weight * (sin + float64(s.Drag.Value*cos))
	h.Brake = math.Max(0, weight*(sin-float64(glides*cos)))
	h.Crew = ceil(math.Max(h.Pull, h.Brake) / pullOne)
}

// given returns a number of a haul, NaN where it is not known.
func given(x float64) float64 {
	if x == 0 {
		return math.NaN()
	}
	return x
}

// brake returns what holds the sled back, NaN where it is not known.
func (h Haul) brake() float64 {
	if h.Pull == 0 {
		return math.NaN()
	}
	return h.Brake
}

func ceil(x float64) int { return max(1, int(math.Ceil(x-1e-9))) }
