package layout

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Squareness is what the sides and diagonals of a frame say.
type Squareness struct {
	Off    [4]float64 // rad, by which corners 1 to 4 are wider than a right angle
	Misfit float64    // m, as [Frame.Misfit]
	Slack  float64    // m, the misfit that the tape alone may make
	// Twist is how high corner 4 lies out of the plane of the others, m, if the
	// readings are right; 0 where the misfit is within the slack, and where no
	// twist can explain it: a reading is wrong then.
	Twist float64
	Read  [2]float64 // m, what P and Q should read once it is pushed
	// Corner, 3 or 4, is where to push along side C towards the other of the two,
	// side A held; Push is how far, m. Opposite corners then share what is left.
	Corner int
	Push   float64
	Check  measure.Check // the diagonals' difference against 1/4 in.
	Notes  []string
}

// fine is how far apart diagonals may be.
const fine = measure.Inch / 4

var srcFine = &measure.Source{Title: "a quarter inch between the diagonals is fine work", Status: measure.CommonPractice}

// Square tells whether a frame is square from its measured sides and diagonals,
// and what to do. Tape is how far a single reading may be off, m.
//
// A frame of four stiff sides has one way to move, and its best shape is the one
// whose opposite corners add up to half a turn: it lies in a circle, and (Brahmagupta,
// from memory)
//
//	P² = (AC + BD)(AD + BC)/(AB + CD),  Q² = (AC + BD)(AB + CD)/(AD + BC)
//
// For opposite sides alike both are the diagonal of the rectangle. A twisted frame
// always has Q short of the flat frame's: folding it about P brings the other two
// corners together. A misfit above the slack is therefore a wrong reading; one
// below is a wrong reading or a twist.
func (f Frame) Square(tape float64) (Squareness, error) {
	var s Squareness
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.05, Source: srcTape}).Check("tape", tape); err != nil {
		return s, err
	}
	misfit, err := f.Misfit()
	if err != nil {
		return s, err
	}
	s.Misfit = misfit
	s.Slack = tape * f.spread()
	a, b, c, d := f.A, f.B, f.C, f.D
	s.Read[0] = math.Sqrt((a*c + b*d) / (a*b + c*d) * (a*d + b*c))
	s.Read[1] = math.Sqrt((a*c + b*d) / (a*d + b*c) * (a*b + c*d))

	flat := f
	flat.P -= misfit / 2 // both diagonals are believed alike
	flat.Q += misfit / 2
	corners, err := flat.Corners()
	if err != nil {
		return s, err
	}
	for i, γ := range corners {
		s.Off[i] = γ - math.Pi/2
	}
	// Corner 3 lies at this along side A, from corner 1.
	three := func(p float64) float64 { return (a*a + (p-b)*(p+b)) / (2 * a) }
	push := three(flat.P) - three(s.Read[0])
	s.Corner, s.Push = 3, push
	if push < 0 {
		s.Corner, s.Push = 4, -push
	}
	s.Check = measure.Check{
		Name: "diagonals of the frame", Kind: measure.Length, AtLeast: false, Limit: fine, Rule: srcFine,
		Value: math.Abs((f.P - f.Q) - (s.Read[0] - s.Read[1])),
	}
	switch {
	case misfit > s.Slack+tiny:
		s.note("the readings do not belong together, twisted or not: measure all six again")
		s.Check.Err = &measure.Error{Field: "diagonal Q", Kind: measure.Length, Value: f.Q, Class: measure.ErrRange, Why: "no frame with these sides has it", Want: "six readings of one frame"}
	case misfit < -s.Slack-tiny:
		s.Twist = f.fold()
		s.note("a reading is wrong, or the frame is twisted: corner 4 lies " + measure.Length.Format(s.Twist, measure.SI) + " out of the plane of the others")
		s.Check.Err = &measure.Error{Field: "diagonal Q", Kind: measure.Length, Value: f.Q, Class: measure.ErrRange, Why: "the flat frame has a longer one", Want: "six readings of a flat frame"}
	}
	if whole(a) && whole(b) && whole(c) && whole(d) {
		s.note("all sides are whole feet: nominal lengths? stock runs 1/4 to 1/2 in. long; measure them")
		s.Check.Rests = append(s.Check.Rests, measure.Assumption{Name: "lengths of the sides", Text: "whole feet, as if not measured", Known: measure.Assumed, Decides: true})
	}
	if math.Abs(a-c) > fine || math.Abs(b-d) > fine {
		s.note("opposite sides differ by more than 1/4 in.: no pushing makes all corners square")
	}
	return s, nil
}

func (s *Squareness) note(text string) {
	s.Notes, s.Check.Notes = append(s.Notes, text), append(s.Check.Notes, text)
}

// whole reports whether a length is whole feet.
func whole(x float64) bool {
	feet := math.Round(x / measure.Foot)
	return feet > 0 && math.Abs(x-feet*measure.Foot) < 1e-6
}

// spread returns how much the misfit moves when every reading is off by one the
// worst way.
func (f Frame) spread() float64 {
	const h = 1e-6
	sum := 1.0 // of Q
	for i := range 5 {
		move := func(by float64) (float64, error) {
			g := f
			*[]*float64{&g.A, &g.B, &g.C, &g.D, &g.P}[i] += by
			return g.Misfit()
		}
		up, err1 := move(h)
		down, err2 := move(-h)
		if err1 != nil || err2 != nil {
			return math.Inf(1) // at the edge of closing no triangle: any misfit may be the tape's
		}
		sum += math.Abs(up-down) / (2 * h)
	}
	return sum
}

// fold returns the height of corner 4 over the plane of the others that makes the
// diagonal as short as Q.
func (f Frame) fold() float64 {
	// Feet and heights of corners 2 and 4 on the diagonal P.
	x2 := (f.A*f.A + (f.P-f.B)*(f.P+f.B)) / (2 * f.P)
	x4 := (f.D*f.D + (f.P-f.C)*(f.P+f.C)) / (2 * f.P)
	h2 := math.Sqrt(math.Max(0, (f.A-x2)*(f.A+x2)))
	h4 := math.Sqrt(math.Max(0, (f.D-x4)*(f.D+x4)))
	cos := (f.Q*f.Q - (x2-x4)*(x2-x4) - h2*h2 - h4*h4) / (2 * h2 * h4)
	if !(cos >= -1) { // shorter than any fold makes it
		return h4
	}
	return h4 * math.Sqrt(math.Max(0, (1-cos)*(1+cos)))
}

// FromNominal returns the least and the greatest diagonal, m, that a square frame
// may have whose sides are nominal lengths, m: stock runs up to 1/2 in. longer
// (common practice). It
// shows how little nominal lengths say; measure the sides and use [Diagonal].
func FromNominal(a, b float64) (least, greatest float64, err error) {
	if least, err = Diagonal(a, b); err != nil {
		return 0, 0, err
	}
	return least, math.Hypot(a+measure.Inch/2, b+measure.Inch/2), nil
}
