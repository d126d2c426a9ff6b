// Package plan reads the plan file: one dock, its people, its lake and its ice,
// in the words and units of the builder who measured them.
//
// # Model
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
//
// # Assumptions and limits
//
// A value that the file leaves out is assumed, one that it calls "unknown" is not
// known; either may have a default, which [Explain] prints. Ranges of fields keep out
// slips of the pen and say nothing of strength. A plan is one rectangular dock.
//
// # Sources
//
// The package computes nothing that has an author: JSON is RFC 8259, units are those of
// lumber/measure, defaults and the proposals of [New] are our choice.
//
// # Example
//
//	file, err := plan.Demo("swim") // or os.Open of a plan of one's own
//	if err != nil {
//		return err
//	}
//	p, err := plan.Read("swim.json", file)
//	if err != nil {
//		return err // every mistake, each with its line
//	}
//	fmt.Println(measure.Length.Format(p.Frame.Length.Value, measure.US))
package plan
