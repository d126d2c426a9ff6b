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
// # Limits
//
// Boards thinner than 2 in. nominal, 5/4 decking among them, have no published
// design values: their strength is no answer, their rule a table or the rating
// on the board. Glued, machine-graded and fire-treated lumber, impact, and the
// resistance factors of limit states design are not covered. Nothing here
// replaces local codes, permits and licensed practice.
package lumber
