// Package lumber has the sizes, design values, checks, spans and weights of the
// lumber a floating dock is framed with.
//
// # Model
//
// Members are straight rectangular pieces of dimension lumber (2 to 4 in. thick)
// or timber (5 in. and more), designed by allowable stress design after the
// National Design Specification for Wood Construction, edition 2018, with the
// design values of its Supplement: Table 4A by species, Table 4B for Southern
// Pine by width (values in force since June 2013), Table 4D for timbers. Values
// are kept digit for digit as printed, with the status of each row; much was read
// second-hand or is recalled, and says so.
//
// A [Member] has a [Section] and a [Grade] ([Size], [Lookup]). [Member.Adjusted]
// gives its design values with every factor applied and why; [Member.Check]
// compares them with a [Demand] of any analysis. The zero values of a Member are
// the cautious ones: wet, incised, single, unheld, loads permanent.
//
// Tables of spans follow from the same values: [Member.Span] for joists,
// [Member.BeamSpan] for beams of one to three plies, [Member.Overhang] for joists
// past their support, [Board.Check] for deck boards by table or rating. [Cut] lays
// pieces into boards in hand and lengths to buy, with a proven bound on the cost;
// [Deck.Rows] lays the deck. Weight, shrinkage and gaps follow from specific
// gravity and moisture ([Member.Weights], [Shrinkage], [Gap]).
//
// # Assumptions
//
// Where sources differ both are on record, and the choice is named: Select
// Structural Spruce-Pine-Fir has an Fb of 1250 psi (one transcription prints 1150,
// from which the published spans do not follow); Douglas Fir-Larch No.2 has 900
// (875 until 1997); Southern Pine before 2013 was listed higher and is not mixed
// in; Redwood weighs by a specific gravity of 0.37 on the light and 0.44 on the
// heavy side. Timbers that show incisions are reduced like dimension lumber, damp
// lumber in service is taken at 60 % moisture, and a section up to 1/16 in. off a
// dressed size counts as that size: our choices.
//
// # What is complete
//
// Sizes of PS 20 to 14 in. of width and timbers to 24 in.; Table 4A for thirteen
// species groups, Table 4B in thirteen grades, Table 4D for Douglas Fir-Larch,
// Hem-Fir, Spruce-Pine-Fir and Southern Pine, with gaps: a grade that is not in
// the files is an error that lists those that are. All factors of NDS Table 4.3.1
// but buckling stiffness (CT, for trusses). Columns are single or of
// plies that buckle each for itself sideways (no credit for nailing, NDS 15.3).
// The strength across the grain in tension, and what a notch away from the ends
// takes off the bending strength, are not computed: check the depth left.
//
// Published spans that do not follow from design values, and are not reproduced:
// deck beams of species other than Southern Pine, and one to three short cells of
// three-ply beams. Heights of deck posts (their load is not on record) are left
// out. Tests run every recorded outside value.
//
// # Limits
//
// Boards thinner than 2 in. nominal, 5/4 decking among them, have no published
// design values: their strength is no answer, their rule a table or the rating on
// the board. Glued, machine-graded and fire-treated lumber, impact, and limit
// states design (the CSA values for Canada) are not covered. Nothing here replaces
// local codes, permits and licensed practice.
//
// # Sources
//
// National Design Specification for Wood Construction and its Supplement,
// American Wood Council, 2018; PS 20, NIST; International Residential Code 2012 to
// 2021 and DCA 6-2015 for spans; Wood Handbook, FPL-GTR-190, and FPL-RP-489 for
// moisture. Each value and factor names its place and how well it was read.
//
// # Example
//
//	size, err := lumber.Size("2x8")
//	if err != nil {
//		return err
//	}
//	grade, err := lumber.Lookup("hem fir", "#2", size)
//	if err != nil {
//		return err
//	}
//	joist := lumber.Member{Section: size, Grade: grade, Repetitive: true} // wet, incised
//	span, check, err := joist.Span(16*measure.Inch, 10*measure.PSF, 40*measure.PSF)
//	if err != nil {
//		return err
//	}
//	fmt.Println(measure.FeetInches(span, 1), check.Rule)
package lumber
