// Package plan reads the plan file: one dock, its people, its lake and its ice,
// in the words and units of the builder who measured them.
//
// # The file
//
// A plan is a JSON object. Quantities are texts with a unit ("12 ft 6 in",
// "55 gal", "-4 F"); counts and prices are numbers. "unknown" is legal
// everywhere: a cautious value stands in where there is one, and whatever rests
// on it says so. "_note" is legal in every object. Unknown fields are refused.
//
// One table of fields (see [Explain]) drives reading, checking and explaining,
// so that none of them can differ from another.
//
// # Errors
//
// [Read] reports every mistake of a file together, each with line, column,
// field, value and what is accepted, and returns what could be read beside
// them. The package knows no lumber and no physics: names of sizes and species
// are checked by frame/dock, which builds the models.
package plan
