package layout_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Bad data is refused with a class, never laid out.
func TestNewRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	pin := func(at layout.Point, a, b string) func(d *layout.Drawing) {
		return func(d *layout.Drawing) { d.Pins = []layout.Pin{{Name: "pin", At: at, On: [2]string{a, b}}} }
	}
	for name, c := range map[string]struct {
		change func(d *layout.Drawing)
		class  error
	}{
		"no pieces":            {func(d *layout.Drawing) { d.Pieces = nil }, measure.ErrUnknown},
		"stops alone":          {func(d *layout.Drawing) { d.Pieces = d.Pieces[6:] }, measure.ErrUnknown},
		"slices":               {func(d *layout.Drawing) { d.Slices = 4 }, measure.ErrRange},
		"too many":             {func(d *layout.Drawing) { d.Bolts = make([]layout.Bolt, 6000) }, measure.ErrRange},
		"piece without a name": {func(d *layout.Drawing) { d.Pieces[0].Name = "" }, measure.ErrName},
		"two of a name":        {func(d *layout.Drawing) { d.Pieces[0].Name = "rim 2" }, measure.ErrName},
		"kind":                 {func(d *layout.Drawing) { d.Pieces[0].Kind = 9 }, measure.ErrName},
		"slanted piece":        {func(d *layout.Drawing) { d.Pieces[0].To.Y += 0.1 }, measure.ErrRange},
		"no length":            {func(d *layout.Drawing) { d.Pieces[0].To = d.Pieces[0].From }, measure.ErrRange},
		"From.X":               {func(d *layout.Drawing) { d.Pieces[0].From.X = nan }, measure.ErrRange},
		"Width":                {func(d *layout.Drawing) { d.Pieces[0].Width = 0 }, measure.ErrRange},
		"Depth":                {func(d *layout.Drawing) { d.Pieces[0].Depth = inf }, measure.ErrRange},
		"Plies":                {func(d *layout.Drawing) { d.Pieces[0].Plies = -1 }, measure.ErrRange},
		"splice":               {func(d *layout.Drawing) { d.Pieces[0].Splices = []layout.Splice{{At: 9}} }, measure.ErrRange},
		"ply":                  {func(d *layout.Drawing) { d.Pieces[0].Splices = []layout.Splice{{At: 1, Ply: 2}} }, measure.ErrRange},
		"drum's name":          {func(d *layout.Drawing) { d.Drums[0].Name = "rim 1" }, measure.ErrName},
		"drum's place":         {func(d *layout.Drawing) { d.Drums[0].At.X = nan }, measure.ErrRange},
		"Diameter":             {func(d *layout.Drawing) { d.Drums[0].Diameter = 0 }, measure.ErrRange},
		"Length":               {func(d *layout.Drawing) { d.Drums[0].Length = -1 }, measure.ErrRange},
		"Height":               {func(d *layout.Drawing) { d.Drums[0].Height = -1 }, measure.ErrRange},
		"Bears":                {func(d *layout.Drawing) { d.Drums[0].Bears = 7 }, measure.ErrRange},
		"deck's name":          {func(d *layout.Drawing) { d.Decks[0].Name = "" }, measure.ErrName},
		"deck":                 {func(d *layout.Drawing) { d.Decks[0].Max = d.Decks[0].Min }, measure.ErrRange},
		"Face":                 {func(d *layout.Drawing) { d.Decks[0].Face = 0 }, measure.ErrRange},
		"bolt's name":          {func(d *layout.Drawing) { d.Bolts[0].Name = "deck" }, measure.ErrName},
		"bolt's place":         {func(d *layout.Drawing) { d.Bolts[0].At.Y = inf }, measure.ErrRange},
		"no tail":              {func(d *layout.Drawing) { d.Bolts[0].Tail = layout.Point{} }, measure.ErrRange},
		"slanted tail":         {func(d *layout.Drawing) { d.Bolts[0].Tail.X = 0.01 }, measure.ErrRange},
		"pin's name":           {func(d *layout.Drawing) { d.Pins = []layout.Pin{{}} }, measure.ErrName},
		"pin's place":          {pin(layout.Point{X: nan}, "rim 1", "rim 2"), measure.ErrRange},
		"pin on nothing":       {pin(layout.Point{X: 1}, "rim 1", "rim 3"), measure.ErrName},
		"pin on one piece":     {pin(layout.Point{X: 1}, "rim 1", "rim 1"), measure.ErrName},
		"pin on a stop":        {pin(layout.Point{X: 1}, "rim 1", "stop A1"), measure.ErrName},
		"pin on an axis":       {pin(layout.Point{X: 1, Y: 0.75 * in}, "rim 1", "joist 4"), measure.ErrRange},
		"room":                 {func(d *layout.Drawing) { d.Room.Wrench = nan }, measure.ErrRange},
	} {
		d := bays(t)
		c.change(&d)
		if l, err := layout.New(d); !errors.Is(err, c.class) || l != nil {
			t.Errorf("%s: %v, want %v", name, err, c.class)
		}
	}
	var none layout.Layout
	if _, err := none.Under(layout.Point{}); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	if _, err := none.On("rim 1"); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	if _, err := (*layout.Layout)(nil).On(""); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	if _, err := none.Lift(0, 1, layout.Strength{}); !errors.Is(err, measure.ErrUnknown) || none.Area(0) != 0 {
		t.Error(err)
	}
}

func TestRectangleRefuses(t *testing.T) {
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	sound := layout.Rectangle{Length: 3, Width: 2, Across: true, Marks: []float64{0, 1}, Joist: s, Rim: s}
	if _, err := sound.Pieces(); err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(r *layout.Rectangle){
		"Length":            func(r *layout.Rectangle) { r.Length = math.NaN() },
		"Rim":               func(r *layout.Rectangle) { r.Rim.Width = 0 },
		"marks that shrink": func(r *layout.Rectangle) { r.Marks = []float64{1, 0} },
		"marks on another":  func(r *layout.Rectangle) { r.Marks = []float64{0, 1 * in} },
		"mark outside":      func(r *layout.Rectangle) { r.Marks = []float64{0, 3} },
		"mark before":       func(r *layout.Rectangle) { r.Marks = []float64{-1, 1} },
		"rims too thick":    func(r *layout.Rectangle) { r.Rim.Width = 1 },
		"a mark not known":  func(r *layout.Rectangle) { r.Marks = []float64{math.Inf(1)} },
		"thickness":         func(r *layout.Rectangle) { r.Joist.Width = -1 },
	} {
		r := sound
		change(&r)
		if p, err := r.Pieces(); !errors.Is(err, measure.ErrRange) || p != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A layout whose parts were taken away, or spoilt, after New answers nothing.
func TestSpoiltLayoutRefuses(t *testing.T) {
	strong := layout.Strength{Moment: 300, Screw: 600, Screws: 2}
	if _, err := lay(t, bays(t)).Lift(0, 900, strong); err != nil {
		t.Fatal(err)
	}
	for _, s := range []layout.Strength{{Moment: 5e-324, Screw: 600, Screws: 2}, {Moment: 300, Screw: 5e-324, Screws: 2}} {
		if lift, err := lay(t, bays(t)).Lift(0, 900, s); !errors.Is(err, measure.ErrRange) {
			t.Errorf("boards of no strength: %+v, %v", lift, err)
		}
	}
	for name, change := range map[string]func(l *layout.Layout){
		"no drums":        func(l *layout.Layout) { l.Drawing.Drums = nil },
		"no decks":        func(l *layout.Layout) { l.Drawing.Decks = nil },
		"no pieces":       func(l *layout.Layout) { l.Drawing.Pieces = nil },
		"no bearings":     func(l *layout.Layout) { l.Bearings = nil },
		"a deck too many": func(l *layout.Layout) { l.Bearings[0].Deck = 7 },
		"a deck too few":  func(l *layout.Layout) { l.Bearings[0].Deck = -1 },
		"no place":        func(l *layout.Layout) { l.Bearings[0].At.X = math.NaN() },
		"elsewhere":       func(l *layout.Layout) { l.Bearings[0].At = layout.Point{X: 90, Y: 90} },
		"no length":       func(l *layout.Layout) { l.Drawing.Drums[0].Length = math.NaN() },
		"no boards":       func(l *layout.Layout) { l.Drawing.Decks[0].Face = 0 },
	} {
		l := lay(t, bays(t))
		change(l)
		if lift, err := l.Lift(0, 900, strong); err == nil {
			t.Errorf("%s: %+v", name, lift)
		}
		if on, err := l.Under(layout.Point{X: 0.3, Y: 0.4}); strings.HasPrefix(name, "no ") && len(l.Drawing.Pieces)*len(l.Drawing.Decks)*len(l.Drawing.Drums)*len(l.Bearings) == 0 && err == nil {
			t.Errorf("%s: %+v", name, on)
		}
	}
}
