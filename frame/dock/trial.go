package dock

import (
	"context"
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
	ctx     context.Context // of the report, which lives no longer; nil is one that never ends
	names   []string        // of the situations that decided something; a trial meets no others
	all     solved          // the plan's own envelope
	base    *base           // and how it was found; nil before
	layouts memo[layout.Drawing, *layout.Layout]
	storms  memo[*hold, *storm]
	spans   memo[berth, *span]
	season  entry[struct{}, *Season]
}

// context returns what the report's work ends with.
func (t *trial) context() context.Context {
	if t == nil || t.governing == nil || t.ctx == nil {
		return context.Background()
	}
	return t.ctx
}

// A memo keeps what was made of equal inputs.
type memo[K, V any] struct {
	mu   sync.Mutex
	seen []*entry[K, V]
}

// An entry is made once, by whoever comes first.
type entry[K, V any] struct {
	sync.Once
	of   K
	made V
	err  error
}

// once returns the entry of an input.
func once[K, V any](m *memo[K, V], of K) *entry[K, V] {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, e := range m.seen {
		if reflect.DeepEqual(e.of, of) {
			return e
		}
	}
	e := &entry[K, V]{of: of}
	m.seen = append(m.seen, e)
	return e
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
	plane *flat // the frame in its own plane
	met   []Outcome
	rides []*ride

	path string // of the trial that asks
}

// keep remembers how the plan's own dock was solved.
func (t *trial) keep(r *raft, plane *flat, e *Envelope, rides []*ride) {
	if t != nil && t.path == "" {
		t.base = &base{raft: r, plane: plane, met: e.Situations, rides: rides}
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

// like returns how the plan's own dock rests in the same situation, where a raft has as
// many nodes: the search for this one's rest begins there.
func (t *trial) like(s *Situation, r *raft) *ride {
	if t == nil || t.base == nil || s.lake.level != nil {
		return nil
	}
	for i := range t.base.met {
		if near := t.base.rides[i]; t.base.met[i].Name == s.Name && near != nil && len(near.Move) == len(r.grid.Nodes) {
			return near
		}
	}
	return nil
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

// laid returns the dock's layout, worked out once in a report for each drawing.
func (d *Dock) laid() (*layout.Layout, error) {
	of, err := d.drawing()
	if err != nil {
		return nil, err
	}
	if d.trial == nil {
		return layout.New(of)
	}
	l := once(&d.trial.layouts, of)
	l.Do(func() { l.made, l.err = layout.New(of) })
	return l.made, l.err
}

// surveyed returns the survey of a mooring, made once in a report for each.
func (d *Dock) surveyed(h *hold) (*storm, error) {
	if d.trial == nil {
		return h.survey()
	}
	st := once(&d.trial.storms, h)
	st.Do(func() { st.made, st.err = h.survey() })
	return st.made, st.err
}

// A berth is what decides between which levels lines work: how they are laid, not how the
// wind blows.
type berth struct {
	moor.Mooring
	low, high float64 // m, the plan's levels
}

// A span is where lines work, and how far was looked.
type span struct {
	bands  []moor.Band
	looked [2]float64
}

// spanned returns between which levels the lines of a mooring work, found once in a report
// for each.
func (d *Dock) spanned(h *hold) (*span, error) {
	if d.trial == nil {
		return h.working()
	}
	s := once(&d.trial.spans, berth{h.Mooring, h.levels[0], h.levels[2]})
	s.Do(func() { s.made, s.err = h.working() })
	return s.made, s.err
}
