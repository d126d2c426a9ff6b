package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Board is a deck board across joists. There is no published design value for
// 5/4 boards, so that the verdict is a table's or the board's own rating; stress
// is information.
type Board struct {
	Section Section // dressed; lies on its wide face, however it is written
	Rating  float64 // span rating printed on the board, m; 0 is none
	Slanted bool    // runs at up to 45° to the joists, not square across them
}

// boardRows is the table of joist spacings, in inches, by dressed thickness.
var boardRows = []struct{ thick, square, slanted float64 }{
	{1.5, 24, 16},
	{1, 16, 12},
}

var (
	srcBoard = &measure.Source{
		Title: "International Residential Code", Edition: "2018 and 2021",
		Locator: "Table R507.7, maximum joist spacing for decking", Status: measure.Quoted,
	}
	srcRating = &measure.Source{
		Title: "span rating printed on the board", Status: measure.CommonPractice,
	}
)

// slantedShare is how much of its rating a board keeps at 45°: the lesser of the
// table's two ratios, 12/16 and 16/24. Our choice.
const slantedShare = 2.0 / 3

// metric is what a dressed size loses where it is written in millimetres: PS 20 has
// 38 mm for 1-1/2 in.
const metric = 0.11 * measure.Millimetre

// Check compares a joist spacing, m, center to center, with the greatest the
// board may have: 16 in. square across and 12 in. slanted for a 5/4 board (1 in.
// dressed), 24 and 16 in. for 2 in. nominal. A rating on the board replaces the
// table. A board thinner than 1 in. dressed gets no answer. IRC Table R507.7.
func (b Board) Check(spacing float64) (measure.Check, error) {
	if err := b.Section.check(); err != nil {
		return measure.Check{}, err
	}
	if err := spacings.Check("spacing", spacing); err != nil {
		return measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: 2}).Check("Rating", b.Rating); err != nil {
		return measure.Check{}, err
	}
	c := measure.Check{Name: "deck board over its joists", Kind: measure.Length, Value: spacing, Limit: math.NaN()}
	row := -1
	for i, r := range boardRows {
		if b.Section.thin() >= r.thick*measure.Inch-metric {
			row = i
			break
		}
	}
	switch {
	case row < 0:
		c.Err = &measure.Error{
			Field: "thickness of the board", Kind: measure.Length, Value: b.Section.thin(), Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Length, Lo: 1 * measure.Inch, Hi: math.Inf(1), Source: srcBoard},
		}
	case b.Rating > 0 && b.Slanted:
		c.Limit, c.Rule = b.Rating*slantedShare, srcRating
		c.Notes = []string{"a rating is for boards square across; two thirds of it are taken for slanted ones"}
	case b.Rating > 0:
		c.Limit, c.Rule = b.Rating, srcRating
	case b.Slanted:
		c.Limit, c.Rule = boardRows[row].slanted*measure.Inch, srcBoard
	default:
		c.Limit, c.Rule = boardRows[row].square*measure.Inch, srcBoard
	}
	return c, nil
}

// bends holds M/(PL) and deflection·EI/(PL³) under a force at mid span of equal
// spans, from the theorem of three moments: exact.
var bends = map[struct {
	spans int
	inner bool
}]struct{ moment, deflection float64 }{
	{1, false}: {1.0 / 4, 1.0 / 48},
	{2, false}: {13.0 / 64, 23.0 / 1536},
	{3, false}: {1.0 / 5, 7.0 / 480},
	{3, true}:  {7.0 / 40, 11.0 / 960},
}

// Under returns, as information and no verdict, the bending stress (Pa) and the
// deflection (m) of the board under a force (N) at the middle of a span: of one,
// two or three equal spans (m), and of three in the end span or the inner one, by
// beam theory. The
// modulus of elasticity e (Pa) is the caller's: none is published for 5/4 boards.
func (b Board) Under(force, spacing float64, spans int, inner bool, e float64) (stress, deflection float64, err error) {
	if err := b.Section.check(); err != nil {
		return 0, 0, err
	}
	if err := spacings.Check("spacing", spacing); err != nil {
		return 0, 0, err
	}
	if err := (measure.Range{Kind: measure.Force, Hi: 1e6}).Check("force", force); err != nil {
		return 0, 0, err
	}
	moduli := measure.Range{Kind: measure.Stress, Lo: 1, Hi: stresses.Hi}
	if err := moduli.Check("modulus of elasticity", e); err != nil {
		return 0, 0, err
	}
	k, ok := bends[struct {
		spans int
		inner bool
	}{spans, inner}]
	if !ok {
		return 0, 0, &measure.Error{
			Field: "spans", Value: float64(spans), Class: measure.ErrRange,
			Want: "1, 2 or 3 equal spans, an inner span only of 3",
		}
	}
	s := Section{Width: b.Section.wide(), Depth: b.Section.thin()}
	return k.moment * force * spacing / s.Modulus(),
		k.deflection * force * spacing * spacing * spacing / (e * s.Inertia()), nil
}
