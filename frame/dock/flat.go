package dock

import (
	"errors"
	"maps"
	"math"
	"reflect"
	"slices"
	"sync"

	"example.org/floewright/frame/rack"
)

// A flat is the dock's frame in its own plane: rims through, joists between them, and
// the deck boards in a few bundles, each held by two rows of screws.
type flat struct {
	dock   *Dock
	frames []rack.Frame // with soft joints and screws, with stiff ones, and with soft screws at stiff joints
	floats []float64    // by node, a share of what the floats hold: 1 in all

	effects []map[push]*effect // by frame
	known   *flat              // the same frame, solved before; nil is none
}

// bundles is how many boards stand for the deck: more change its forces by a few
// per cent.
const bundles = 3

// stiffness of joints and screws in their plane, N/m, far enough apart for what nails,
// hangers and brackets do: EN 1995-1-1:2004, Table 7.1 puts single fasteners between
// (from memory).
var slips = [3]struct{ joint, screw float64 }{{1e5, 1e5}, {5e7, 5e7}, {5e7, 1e5}}

// node returns the node where a joist meets a rim.
func (f *flat) node(joist, side int) int { return 2*joist + side }

// flat builds the frame in its plane.
func (d *Dock) flat() (*flat, error) {
	out := &flat{dock: d, floats: make([]float64, 2*len(d.centres))}
	near, far := d.rimAxes()
	var plain rack.Frame
	rims := [2][]int{}
	for k, c := range d.centres {
		for side, t := range [2]float64{near, far} {
			rims[side] = append(rims[side], out.node(k, side))
			plain.Nodes = append(plain.Nodes, d.on(c, t))
			plain.Names = append(plain.Names, "")
		}
	}
	rigid := [2]rack.End{rack.Rigid(), rack.Rigid()}
	ea, ei, err := d.flatRigidity(d.rim, d.rimPlies)
	if err != nil {
		return nil, err
	}
	for side, name := range [2]string{"near rim", "far rim"} {
		plain.Members = append(plain.Members, rack.Member{Nodes: rims[side], EA: ea, EI: ei, Ends: rigid, Name: name})
	}
	if ea, ei, err = d.flatRigidity(d.joist, 1); err != nil {
		return nil, err
	}
	joists := make([]int, len(d.centres))
	for k := range d.centres {
		joists[k] = len(plain.Members)
		plain.Members = append(plain.Members, rack.Member{Nodes: []int{out.node(k, 0), out.node(k, 1)}, EA: ea, EI: ei, Name: joistName(k)})
	}
	rows, _ := d.boards()
	if ea, _, err = d.flatRigidity(d.board, 1); err != nil {
		return nil, err
	}
	width := d.board.section.Depth
	n := float64(rows) / bundles
	for _, s := range slips {
		f := plain
		f.Members = append([]rack.Member(nil), plain.Members...)
		for _, m := range joists {
			end := rack.End{Along: s.joint, Across: s.joint}
			f.Members[m].Ends = [2]rack.End{end, end}
		}
		for i := range bundles {
			t := near + (far-near)*(float64(i)+0.5)/bundles
			// Each of n boards bends by itself: EA w²/12 is that of one.
			b := rack.Board{From: d.on(0, t), To: d.on(d.run(), t), EA: n * ea, EI: n * ea * width * width / 12}
			if b, err = f.Lay(b, d.screwed(), n*s.screw, joists...); err != nil {
				return nil, err
			}
			f.Boards = append(f.Boards, b)
		}
		out.frames = append(out.frames, f)
	}
	for i, m := range d.floats {
		s, t := d.from(m.x, m.y)
		for _, h := range d.shares(d.touched(i), s) {
			part := h.share / float64(len(d.floats))
			far := min(max(0, (t-near)/(far-near)), 1)
			out.floats[out.node(h.joist, 0)] += max(0, part) * (1 - far)
			out.floats[out.node(h.joist, 1)] += max(0, part) * far
		}
	}
	out.share()
	return out, nil
}

// share takes over what a report has found of the same frame: most inputs that it
// tries do not touch the frame's own plane.
func (f *flat) share() {
	if t := f.dock.trial; t != nil && t.base != nil && reflect.DeepEqual(t.base.plane.frames, f.frames) && slices.Equal(t.base.plane.floats, f.floats) {
		f.known = t.base.plane
	}
}

// flatRigidity returns EA and the EI of bending in the frame's plane, of all plies,
// which bend each by itself.
func (d *Dock) flatRigidity(w wood, plies int) (ea, ei float64, err error) {
	ei, _, err = d.rigidity(w, plies)
	e := ei / w.section.Inertia() // times the plies
	return e * w.section.Area(), e * w.section.Turned().Inertia(), err
}

// A pull is a force on the frame in its plane: on a node, or spread along a rim, N/m.
type pull struct {
	node   int
	x, y   float64
	rim    bool
	side   int
	across float64
}

// A flatRide is the frame in its plane in one situation: what each joint and member
// carries with any of the stiffnesses.
type flatRide struct {
	joints []flatJoint // two ends of each joist in turn
	weak   []flatPeak  // by member: rims, then joists
	left   float64
}

// A flatJoint is what pulls a joist's end off its rim, and what slides it along, N.
type flatJoint struct{ pull, slide float64 }

// A flatPeak is the largest moment the weak way and where.
type flatPeak struct{ moment, at float64 }

// A push is one force of 1 N, or 1 N/m along a rim: all situations are sums of a few.
type push struct {
	node int
	y    bool
	rim  bool
	side int
}

// An effect is what a push does to one of the frames, signs and all.
type effect struct {
	axial, across []float64   // by joist end
	moment, at    [][]float64 // by member, at both ends and the middle of each piece
	left          float64
}

// screwed returns how far a board's two screws lie apart.
func (d *Dock) screwed() float64 { return 0.6 * d.board.section.Depth }

// effect solves one frame under one push. Its floats carry what is left over.
func (f *flat) effect(frame int, p push) (*effect, error) {
	fr := f.frames[frame]
	fr.Drag = rack.Drag{Nodes: f.floats}
	switch {
	case p.rim:
		fr.Members = append([]rack.Member(nil), fr.Members...)
		run := f.dock.centres[len(f.dock.centres)-1] - f.dock.centres[0]
		fr.Members[p.side].Loads = []rack.Load{rack.Uniform(0, run, 0, 1)}
	case p.y:
		fr.Forces = []rack.Force{{Node: p.node, Y: 1}}
	default:
		fr.Forces = []rack.Force{{Node: p.node, X: 1}}
	}
	s, err := fr.Solve()
	if err != nil {
		return nil, err
	}
	out := &effect{left: s.Residual}
	for _, j := range s.Joints[4:] { // after the rims'
		out.axial = append(out.axial, j.Axial.Most)
		out.across = append(out.across, j.Across.Most)
	}
	for i := range s.Lines {
		l := &s.Lines[i]
		var m, at []float64
		for _, p := range l.Pieces { // the same under every push
			for _, x := range [3]float64{0, 0.5, 1} {
				// Loads are spread evenly, if at all.
				h := x * (p.To - p.Start.X)
				at = append(at, p.Start.X+h)
				m = append(m, p.Start.Moment+(p.Start.Shear+p.Across[0]*h/2)*h)
			}
		}
		out.moment, out.at = append(out.moment, m), append(out.at, at)
	}
	return out, nil
}

// solve finds the effects of every push that the situations are made of.
func (f *flat) solve(met []Situation) error {
	f.effects = make([]map[push]*effect, len(f.frames))
	errs := make([]error, len(f.frames))
	var wait sync.WaitGroup
	for i := range f.frames {
		f.effects[i] = map[push]*effect{}
		if f.known != nil {
			f.effects[i] = maps.Clone(f.known.effects[i])
		}
		wait.Go(func() {
			for _, s := range met {
				for _, p := range s.pulls {
					for u, by := range p.parts() {
						if _, done := f.effects[i][u]; done || by == 0 || errs[i] != nil {
							continue
						}
						f.effects[i][u], errs[i] = f.effect(i, u)
					}
				}
			}
		})
	}
	wait.Wait()
	return errors.Join(errs...)
}

// parts returns the pushes that a pull is the sum of, and how much of each.
func (p pull) parts() map[push]float64 {
	if p.rim {
		return map[push]float64{{rim: true, side: p.side}: p.across}
	}
	return map[push]float64{{node: p.node}: p.x, {node: p.node, y: true}: p.y}
}

// meet adds up the effects of pulls.
func (f *flat) meet(pulls []pull) *flatRide {
	n := len(f.dock.centres)
	out := &flatRide{joints: make([]flatJoint, 2*n), weak: make([]flatPeak, 2+n)}
	for _, effects := range f.effects {
		axial, across := make([]float64, 2*n), make([]float64, 2*n)
		moments, at := make([][]float64, 2+n), [][]float64{}
		for _, p := range pulls {
			for _, u := range [3]push{{node: p.node}, {node: p.node, y: true}, {rim: true, side: p.side}} {
				by, e := p.parts()[u], effects[u]
				if by == 0 || e == nil {
					continue
				}
				out.left, at = math.Max(out.left, e.left), e.at
				for i := range axial {
					axial[i] += float64(by * e.axial[i])
					across[i] += float64(by * e.across[i])
				}
				for i := range moments {
					if moments[i] == nil {
						moments[i] = make([]float64, len(e.moment[i]))
					}
					for k, m := range e.moment[i] {
						moments[i][k] += float64(by * m)
					}
				}
			}
		}
		for i := range axial {
			j := &out.joints[i]
			j.pull, j.slide = math.Max(j.pull, axial[i]), math.Max(j.slide, math.Abs(across[i]))
		}
		for i := range moments {
			for k, m := range moments[i] {
				if w := &out.weak[i]; math.Abs(m) > w.moment*(1+1e-9) {
					*w = flatPeak{math.Abs(m), at[i][k]}
				}
			}
		}
	}
	return out
}
