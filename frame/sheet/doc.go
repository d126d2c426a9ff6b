// Package sheet prints what the library found as pages for the garage and the
// ice, and draws the pictures to build from.
//
// # Model
//
// [Plan], [Section], [Heeled], [Moments], [Cutting], [Righting], [Winter] and
// [Lines] hold plain numbers in SI; Draw returns each as a [Picture], one SVG
// element in black on white with a title and a description for those who do not
// see it. Lengths to build by are printed by package measure in the system asked
// for. No text of a picture lies over another: a picture with more to say grows.
// Numbers that are not finite, or past what a sheet shows, are an error that
// names the field.
//
// [Draw] fills them from a dock and its report: what package dock found of it, and
// nothing beside. A picture whose data are not known is missing, with the reason.
//
// # Pages
//
// A [Document] lays its cards out on sides that both A4 and Letter hold, in type
// of 12 point, and writes them as one page of HTML without scripts, to be read on
// a phone, by a screen reader and on paper. Every side says whose plan it is, when
// and by which method it was made, what was not checked, and that it is no permit
// drawing. The same data give the same text on every machine.
//
// # Assumptions and limits
//
// Heights of text are reckoned with widths a little over those of the faces that the
// page names, so that a side holds what was laid on it; a reader's own larger or wider
// type may turn one side into two. The package computes no strength and no flotation: it draws
// the numbers it is given, but for the deck's edges in [Heeled] and the lengths in
// [Lines], which are plain geometry. In the section the water is level, as the
// heeled dock's joists are nearly; of people one behind the other one is drawn; of
// the forces on a member, those under a hundredth of the greatest are left out.
//
// [WriteFiles] writes a set of files whole or not at all.
//
// # Sources
//
// What is drawn is what package dock found, whose checks name theirs; they stand beside
// the verdicts ([Verdicts]). The sizes that one drawing can show are our choice.
//
// # Example
//
//	picture, err := sheet.Plan{Units: measure.SI, Length: 6, Width: 2.4, Along: []float64{0, 0.4, 0.8}}.Draw() // m
//	if err != nil {
//		return err
//	}
//	fmt.Println(picture.Title, len(picture.SVG))
package sheet
