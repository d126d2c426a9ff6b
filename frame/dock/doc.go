// Package dock is the whole job: it takes a plan (frame/plan), builds the models
// of every package from it, runs their checks and returns one [Report].
//
// # Model
//
// The frame is a rectangle: joists at running marks, two rims across their ends,
// decking on top. Lumber gives no buoyancy. Floats are drums lying level or
// rectangular blocks; a drum pushes up as the cylinder of its girth that has its outside
// volume, or where that is not known 84 % of its length, of steel all of it; a drum between two joists nearer to each other than its
// diameter sits wedged between their lower edges, one in a wider bay bears on the
// deck boards, one under the joists on their lower edges.
//
// Axes: x along the dock and y across it from its middle, z up from the underside
// of the joists.
//
// # Where to begin
//
// [Read] takes a plan; [Dock.Report] runs every check and writes itself as text, JSON
// and lists. The numbers for the sign are [Dock.Plate] of [Dock.Envelope], what to
// measure on launch day [Dock.Launch]; [Dock.Shop] cuts and buys, [Dock.Season] gives
// odds from past winters, [Compare] sets docks side by side.
//
// # The frame
//
// [Dock.Envelope] solves the frame in every situation that the dock meets, as a
// grillage on its floats in parts (package frame) and in its own plane (package
// frame/rack), and keeps the worst. Afloat, heights of weights and of buoyancy act at
// the joists' ends, and follow the drafts; with stiff members the frame takes the
// rigid attitude of package float. Deck boards are beams from joist to joist and
// screws in the plane; their own bending is left out, for which the code's factor
// stands. [Dock.Layout] says what bears on what and which parts do not go together.
//
// # For drawings
//
// [Dock.Shape], [Dock.Lines], [Dock.Crowded], [Dock.Righting] and
// [Envelope.Diagram] give what was found as plain numbers to draw.
//
// # Limits
//
// What has no answer is listed by each report. Those entries are no answers, never
// silence.
//
// # Hardware
//
// The package has no maker's figure: what a hanger, a tie or a drum takes is the
// plan's to say, and what it does not say has no answer. An angle's own bending is
// its maker's too. Corner joints count like any joist's end.
//
// # Assumptions and how verdicts rest on inputs
//
// An input that is unknown or assumed is tried with the other values that it
// might plausibly have. If one of them turns a check, that input decides it: a
// check that rests on an unknown that decides has no answer.
//
// # Sources
//
// Those of the packages that answer, named by each check. Of its own: NIOSH 94-110 and
// MIL-STD-1472 for lifting and carrying, the IMO's code on intact stability for how
// high people's weight lies, the National Building Code of Canada 2010 for a floor that
// gives underfoot; the plan itself for makers' figures and local rules; the rest is
// common practice or our choice, and says so.
//
// # Example
//
//	file, err := plan.Demo("swim") // or os.Open of a plan of one's own
//	if err != nil {
//		return err
//	}
//	d, err := dock.Read("swim.json", file)
//	if err != nil {
//		return err // every mistake of the plan, each with its line
//	}
//	report, err := d.Report(context.Background(), measure.US)
//	if err != nil {
//		return err
//	}
//	for _, topic := range report.Topics {
//		fmt.Println(topic.Worst())
//	}
package dock
