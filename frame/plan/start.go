package plan

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Start is what a new plan starts from: the deck, and one kind of drum. Lengths are
// in m.
type Start struct {
	Units         measure.System // of the texts, and of the sheet
	Length, Width float64        // over the outside of the frame

	// Drum is what the drums are called; Girth is the tape around one, Long is over its
	// ends, Mass its own, kg.
	Drum              string
	Girth, Long, Mass float64

	// Volume is the outside volume of one, m³; 0 is not known. Material is "steel",
	// "plastic" or "", which is not known: where the volume is not known, one that is not
	// of steel counts for 84 % of the cylinder of its girth and length.
	Volume   float64
	Material string

	// Drums is how many at least; 0 takes as many as hold up 35 psf of deck, 20 for
	// people and 15 for the dock (our choice), each 85 % under, or as there is room
	// for. Rows are filled, and boards between drums span 24 in at most, so that more
	// may come out than asked for: the note at the floats says how many, and why. Fewer
	// than asked for never come out: more than there is room for is an error.
	Drums int
}

// A starting frame is made like this (our choice, near the trade's usual).
const (
	startJoist   = 1.5 * measure.Inch  // thickness of lumber
	startBoard   = 5.5 * measure.Inch  // width of a deck board
	startBetween = 1.5 * measure.Inch  // of drums, end to end, and from their sides
	startTight   = 1.5 * measure.Inch  // room of a drum along itself, for each: least
	startPlay    = 1.75 * measure.Inch // middling
	startLoose   = 2 * measure.Inch    // most
	startUnder   = 0.85                // of a drum that may be under
	startStock   = 0.75 * measure.Inch // that a board is longer than the piece
	startSpan    = 24 * measure.Inch   // from joist to joist, most for 2x6 boards (International Residential Code, Table R507.7)
	startLong    = 18 * measure.Foot   // rims longer than that have three plies
	startTaper   = 0.84                // of its cylinder that a plastic drum has at least
	startLoad    = 35 * measure.PSF    // of deck: people, and the dock
)

// A startLayout is where joists and drums of a new plan lie: the drums across the
// dock, wedged in bays, with a bay without drums between.
type startLayout struct {
	start  Start
	marks  []float64 // near faces of the joists
	bays   []int     // that hold drums
	across []float64 // middles of the drums in each
	stops  float64   // clear between the stops of a row; 0: blocks, or neither
	blocks int       // in each bay that holds drums

	places [][2]float64 // of a narrow dock: drums that lie along, under the joists

	note string // of the number of drums, where it is not the one asked for
}

// counted says in the note what came of the number asked for: n rows of as many drums
// each. Tight: they are fewer than hold up the load.
func (l *startLayout) counted(n, each int, tight bool) {
	s := l.start
	var said []string
	if all, filled := n*each, (s.Drums+each-1)/each*each; s.Drums > 0 && all != s.Drums {
		why := "rows are filled"
		if all > filled {
			why = "so many hold up the deck with people on it, and leave no span too long for its boards"
		}
		said = append(said, fmt.Sprintf("%d were asked for; %d rows of %d make it %d: %s.", s.Drums, n, each, all, why))
	}
	if tight {
		said = append(said, fmt.Sprintf("%d drums are fewer than hold up %s on the whole deck; there is no room for more.", n*each, measure.Pressure.Format(startLoad, s.Units)))
	}
	l.note = strings.Join(said, " ")
}

// round returns a length as its text has it.
func (s Start) round(x float64) float64 {
	y, err := measure.Length.Parse(s.text(x))
	if err != nil {
		return math.NaN()
	}
	return y
}

func (s Start) text(x float64) string { return measure.Length.Format(x, s.Units) }

// cylinder returns the volume of the plain cylinder of a drum's girth and length.
func (s Start) cylinder() float64 { return s.Girth * s.Girth * s.Long / (4 * math.Pi) }

// volume returns what one drum displaces, or what stands in for it.
func (s Start) volume() float64 {
	switch {
	case s.Volume > 0:
		return s.Volume
	case s.Material == "steel":
		return s.cylinder()
	}
	return startTaper * s.cylinder()
}

// lay finds room for joists and drums.
func (s Start) lay() (*startLayout, error) {
	for _, c := range []struct {
		field  string
		kind   measure.Kind
		x      float64
		lo, hi float64
	}{
		{"Length", measure.Length, s.Length, 1.5, 14.5},
		{"Width", measure.Length, s.Width, 0.6, 14.5},
		{"Girth", measure.Length, s.Girth, 0.6, 5},
		{"Long", measure.Length, s.Long, 0.3, 3},
		{"Mass", measure.Mass, s.Mass, 1, 200},
		{"Volume", measure.Volume, s.Volume, 0, 1.03 * s.cylinder()},
		{"Drums", measure.Count, float64(s.Drums), 0, 1000},
	} {
		if err := (measure.Range{Kind: c.kind, Lo: c.lo, Hi: c.hi}).Check(c.field, c.x); err != nil {
			return nil, err
		}
	}
	switch {
	case s.Material != "" && s.Material != "steel" && s.Material != "plastic":
		return nil, &measure.Error{Field: "Material", Text: s.Material, Class: measure.ErrName, Want: `"steel", "plastic" or "", which is not known`}
	case s.Volume > 0 && s.Volume < 0.6*s.cylinder():
		return nil, &measure.Error{
			Field: "Volume", Kind: measure.Volume, Value: s.Volume, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Volume, Lo: 0.6 * s.cylinder(), Hi: 1.03 * s.cylinder()},
		}
	}
	s.Length, s.Width = s.round(s.Length), s.round(s.Width)
	thick, rim := s.Girth/math.Pi, float64(s.plies())*startJoist
	row := int((s.Width - 2*rim + startBetween/3) / (s.Long + startBetween))
	if row < 2 && s.Width >= 2*rim+2*thick+3*startBetween {
		return s.narrow(thick, rim)
	}
	if row < 1 {
		return nil, &measure.Error{
			Field: "Width", Kind: measure.Length, Value: s.Width, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Length, Lo: s.Long + startBetween + 2*rim, Hi: 14.5},
		}
	}
	// A drum wedges in its bay and stays inside of the frame's end. Bays with and
	// without drums take turns, so that every joist stands on some.
	drum := thick - startJoist + measure.Inch/8
	least := math.Max(thick-drum+startBetween, 4*startJoist)
	most := int((s.Length - startJoist + least) / (drum + least))
	lift := startUnder*1000*s.volume() - s.Mass // Archimedes, in the water's roundest figure
	need := math.Ceil(startLoad / measure.Gravity * s.Length * s.Width / math.Max(lift, 1e-9) / float64(row))
	spans := math.Ceil((s.Length-startJoist+startSpan)/(drum+startSpan) - 1e-9)
	bays := max(2, min(int(math.Max(need, spans)), most))
	if s.Drums > 0 {
		bays = max(bays, (s.Drums+row-1)/row)
	}
	if bays > most {
		return nil, &measure.Error{
			Field: "Drums", Kind: measure.Count, Value: float64(max(s.Drums, bays*row)), Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Count, Hi: float64(max(0, most) * row)},
		}
	}
	plain := bays - 1
	wide := (s.Length - startJoist - float64(bays)*drum) / float64(plain)
	out := &startLayout{start: s}
	out.counted(bays, row, need > float64(bays))
	at := 0.0
	for i := range bays + plain {
		out.marks = append(out.marks, s.round(at))
		if i%2 == 0 {
			out.bays = append(out.bays, i+1)
			at += drum
		} else {
			at += wide
		}
	}
	out.marks = append(out.marks, s.round(s.Length-startJoist))
	first := rim + startBetween/3 + s.Long/2
	last := math.NaN() // the last one's middle, if it is not as far from its side
	free := s.Width - 2*rim - float64(row)*s.Long
	inner := (free - 2*startBetween/3) / float64(max(1, row-1))
	switch {
	case free <= float64(row)*startLoose:
	case row > 1 && inner >= 2*startPlay+2*startJoist:
		out.blocks = 2 * (row - 1) // at the inner ends; the outer ones bear on the rims
	case free >= float64(row)*startTight+2*startJoist: // two stops
		play := math.Min(startPlay, (free-2*startJoist)/float64(row))
		out.stops = s.round(float64(row) * (s.Long + play))
		first = (s.Width-out.stops+play)/2 + s.Long/2
	case free >= float64(row)*startTight+startJoist: // one: the near rim is the other
		play := math.Min(startLoose-measure.Inch/8, (free-startJoist)/float64(row))
		out.stops = float64(row) * (s.Long + play)
		first, last = rim+play/2+s.Long/2, rim+out.stops-play/2-s.Long/2
		out.stops = s.round(out.stops)
	}
	if math.IsNaN(last) {
		last = s.Width - first
	}
	for i := range row {
		x := (first + last) / 2
		if row > 1 {
			x = first + (last-first)*float64(i)/float64(row-1)
		}
		out.across = append(out.across, s.round(x))
	}
	return out, nil
}

// narrow lays the drums of a dock on which two do not lie end to end: in two rows
// along its sides, where they hold it upright best, under joists a step apart.
func (s Start) narrow(thick, rim float64) (*startLayout, error) {
	each := int((s.Length + startBetween/3) / (s.Long + startBetween)) // to a row
	lift := startUnder*1000*s.volume() - s.Mass
	need := math.Ceil(startLoad / measure.Gravity * s.Length * s.Width / math.Max(lift, 1e-9) / 2)
	n := max(2, int(math.Min(need, float64(each))))
	if s.Drums > 0 {
		n = max(n, (s.Drums+1)/2)
	}
	if n > each {
		return nil, &measure.Error{
			Field: "Drums", Kind: measure.Count, Value: float64(2 * n), Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Count, Hi: float64(2 * each)},
		}
	}
	out := &startLayout{start: s}
	out.counted(n, 2, need > float64(n))
	steps := int(math.Ceil((s.Length-startJoist)/(16*measure.Inch) - 1e-9))
	for i := range steps + 1 {
		out.marks = append(out.marks, s.round((s.Length-startJoist)*float64(i)/float64(steps)))
	}
	for i := range n {
		along := s.round(s.Long/2 + (s.Length-s.Long)*float64(i)/float64(n-1))
		for _, across := range [2]float64{rim + startBetween + thick/2, s.Width - rim - startBetween - thick/2} {
			out.places = append(out.places, [2]float64{along, s.round(across)})
		}
	}
	return out, nil
}

// board returns the length of board that a piece is cut from: stock runs a little over
// whole feet, or steps of 0.3 m.
func (s Start) board(piece float64) string {
	step := measure.Foot
	if s.Units == measure.SI {
		step = 0.3
	}
	return s.text(math.Max(math.Ceil(piece/step-1e-6), 2)*step + startStock)
}

// startStop is the board that stops and blocks are cut from: two of them, and the cuts.
const startStop = 4 * measure.Foot

// stopBoards returns how many of those boards the stops and blocks take.
func (l *startLayout) stopBoards() int {
	n := l.blocks * len(l.bays)
	if l.stops > 0 {
		n = 2 * len(l.bays)
	}
	each := int((startStop - measure.Inch) / (l.start.Girth / math.Pi))
	return (n + max(1, each) - 1) / max(1, each)
}

// plies returns how many boards make a rim.
func (s Start) plies() int {
	if s.Length > startLong {
		return 3
	}
	return 2
}

// pick returns the text for the units.
func (s Start) pick(us, si string) string {
	if s.Units == measure.SI {
		return si
	}
	return us
}

func (s Start) title() string {
	return fmt.Sprintf("New dock, %s by %s", s.text(s.Length), s.text(s.Width))
}
