package dock

import (
	"reflect"
	"slices"
	"strings"
	"sync"

	"example.org/floewright/float/moor"
	"example.org/floewright/frame/layout"
)

// A trial is a dock of which a report is made: the plan's own, or one with another
// value at a path. The zero path is the plan's own. What both have in common is
// worked out once: a report tries dozens of values, and most touch little.
type trial struct {
	path string
	*governing
	own solved
}

// governing is what the trials of one report share.
type governing struct {
	names []string // of the situations that decided something; a trial meets no others
	all   solved   // the plan's own envelope
	base  *base    // and how it was found; nil before
	plane struct { // the frame in its own plane
		sync.Mutex
		*flat
	}
	layouts struct {
		sync.Mutex
		seen []*laidOut
	}
	storms struct {
		sync.Mutex
		seen []*stormed
	}
}

// solved is the envelope that the topics of one report share.
type solved struct {
	once     sync.Once
	envelope *Envelope
	err      error
}

// A base is the plan's own dock in every situation.
type base struct {
	raft  *raft
	met   []Outcome
	rides []*ride

	path string // of the trial that asks
}

// keep remembers how the plan's own dock was solved.
func (t *trial) keep(r *raft, e *Envelope, rides []*ride) {
	if t != nil && t.path == "" {
		t.base = &base{raft: r, met: e.Situations, rides: rides}
	}
}

// known returns what the plan's own dock has in common with a trial of a load or of
// the lake, which leave the frame and its floats as they are; nil for others.
func (t *trial) known() *base {
	if t == nil || t.path == "" || t.base == nil {
		return nil
	}
	if !strings.HasPrefix(t.path, "loads.") && !slices.Contains([]string{"site.wave_height", "site.ten_crests", "site.ice_drop"}, t.path) {
		return nil
	}
	out := *t.base
	out.path = t.path
	return &out
}

// raftOf returns the same raft for another dock, or builds it.
func (b *base) raftOf(d *Dock) (*raft, error) {
	if b == nil {
		return d.raft()
	}
	out := *b.raft
	out.dock = d
	return &out, nil
}

// ride returns how the raft rests in a situation that the trial's path does not
// touch, nil where that is not known.
func (b *base) ride(s *Situation) (*ride, error) {
	if b == nil || slices.Contains(s.inputs, b.path) {
		return nil, nil
	}
	for i := range b.met {
		if o := &b.met[i]; o.Name == s.Name && slices.Equal(o.presses, s.presses) {
			return b.rides[i], o.Err
		}
	}
	return nil, nil
}

// laidOut is a drawing worked out.
type laidOut struct {
	once sync.Once
	of   layout.Drawing
	l    *layout.Layout
	err  error
}

// laid returns the dock's layout, worked out once in a report for each drawing.
func (d *Dock) laid() (*layout.Layout, error) {
	of, err := d.drawing()
	if err != nil {
		return nil, err
	}
	if d.trial == nil {
		return layout.New(of)
	}
	l := d.trial.layout(of)
	l.once.Do(func() { l.l, l.err = layout.New(l.of) })
	return l.l, l.err
}

// layout returns what the report keeps of a drawing.
func (g *governing) layout(of layout.Drawing) *laidOut {
	g.layouts.Lock()
	defer g.layouts.Unlock()
	for _, l := range g.layouts.seen {
		if reflect.DeepEqual(l.of, of) {
			return l
		}
	}
	l := &laidOut{of: of}
	g.layouts.seen = append(g.layouts.seen, l)
	return l
}

// stormed is what a storm does to a mooring.
type stormed struct {
	once sync.Once
	of   *hold
	s    *moor.Survey
	lost []moor.Survey
	err  error
}

// surveyed returns the survey of a mooring, made once in a report for each.
func (d *Dock) surveyed(h *hold) (*moor.Survey, []moor.Survey, error) {
	if d.trial == nil {
		return h.survey()
	}
	st := d.trial.storm(h)
	st.once.Do(func() { st.s, st.lost, st.err = st.of.survey() })
	return st.s, st.lost, st.err
}

// storm returns what the report keeps of a mooring like this one.
func (g *governing) storm(h *hold) *stormed {
	g.storms.Lock()
	defer g.storms.Unlock()
	for _, st := range g.storms.seen {
		if reflect.DeepEqual(st.of, h) {
			return st
		}
	}
	st := &stormed{of: h}
	g.storms.seen = append(g.storms.seen, st)
	return st
}
