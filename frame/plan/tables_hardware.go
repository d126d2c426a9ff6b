package plan

import "example.org/floewright/lumber/measure"

// Hardware is what holds the dock together: the joists' ends, the floats' ties, and
// what is known of the drums.
type Hardware struct {
	Ends       JoistEnds
	DeckFinish Name // of the screws or nails through the boards
	Treatment  Name // of the lumber
	Dries      Name // "yes" or "no": the joints dry between wettings
	Ties       []Tie
	Drums      []Drum
}

// JoistEnds is how each end of a joist is held to its rim.
type JoistEnds struct {
	By        Name  // "nails", "screws", "hanger" or "angle"
	Fastener  Name  // nail, screw or bolt, with its length
	Count     Count // through or into the rim
	InJoist   Count // of a hanger or an angle, into the joist
	Spacing   Quantity
	Edge, End Quantity // of the nearest fastener: from the lumber's edge, from the joist's end
	Steel     Quantity // thickness of the hanger's or the angle's sheet
	Finish    Name     // of the fasteners
	Bracket   Name     // finish of the hanger or the angle

	// The maker's printed allowables, and the duration factor they are printed for.
	Down, Up, Lateral, Along, ToAndFro Quantity
	For                                Name
	Listed                             Name // "yes" or "no": the maker lists screws in place of nails
}

// A Tie is what holds one kind of float.
type Tie struct {
	Floats     Name // of which kind, or "all"
	Of         Name // "rope", "chain", "wire rope" or "strap"
	Strength   Quantity
	Efficiency Quantity // of the weakest end, a share
	Parts      Count
	Rounded    Name // "yes" or "no"
	Point      Quantity
	Slack      Quantity
	Stiffness  Quantity // N/m
	Drag       Quantity // sideways on one float
	Finish     Name     // of a metal one
}

// A Drum is what is known of one kind of drum.
type Drum struct {
	Floats     Name // of which kind, or "all"
	Held       Name // what it held before
	LeakTested Name // "yes" or "no"
	Bungs      Name // "level at the sides", "one above the other" or "in the side wall"
	Closed     Quantity
	Coldest    Quantity
	Hottest    Quantity
	Suction    Quantity // that it bears
	Blown      Quantity // pressure that it bears
	Watched    Name     // "yes" or "no"
	Leak       Quantity // mass of water found in one at most
}

var hardwareFields = []field[Hardware]{
	section("joist_ends", "How each end of a joist is held to its rim.", endFields, func(h *Hardware) *JoistEnds { return &h.Ends }),
	word("deck_finish", finishes, "", "Coating or metal of the screws through the boards, by their box.", func(h *Hardware) *Name { return &h.DeckFinish }),
	choice("treatment", "", "Preservative on the lumber's tag. Unknown: it counts as one with dissolved copper.", []string{"CCA", "ACQ", "CA", "MCA", "borate", "none"}, func(h *Hardware) *Name { return &h.Treatment }),
	plausible(choice("dries", "no", "Whether the joints are out of the water and dry between wettings.", yesNo, func(h *Hardware) *Name { return &h.Dries }), "yes", "no"),
	sections("ties", "What holds the floats that are tied, one entry for each kind.", tieFields, func(h *Hardware) *[]Tie { return &h.Ties }),
	sections("drums", "What is known of the drums, one entry for each kind.", drumFields, func(h *Hardware) *[]Drum { return &h.Drums }),
}

const (
	finishes = `a coating or metal, by what it stands: "plain steel" (for dry rooms), "electroplated zinc" or "galvanized sheet G90" (not in treated wood), ` +
		`"hot-dip galvanized A153", "mechanically galvanized B695 class 55", "galvanized sheet G185", "hot-dip galvanized A123", "silicon bronze", "copper" or "aluminium" ` +
		`(for treated wood that dries), "stainless 304" (stainless, for treated wood that dries), "stainless 316" (for salt, or wet for good)`
	whose = "the name of an entry of floats, or \"all\""
)

var endFields = []field[JoistEnds]{
	choice("by", "", "Nails or screws through the rim into the joist's end, a hanger, or an angle with bolts.", []string{"nails", "screws", "hanger", "angle"}, func(e *JoistEnds) *Name { return &e.By }),
	word("fastener", "a name from the trade with its length, such as \"10d common nail\" or \"1/2 x 5 bolt\"", "", "The nails, screws or bolts; of a hanger, those that its figures are printed for.", func(e *JoistEnds) *Name { return &e.Fastener }),
	count("count", 1, 40, "", "Of them through or into the rim at one end of a joist.", func(e *JoistEnds) *Count { return &e.Count }),
	count("in_joist", 1, 40, "", "Of a hanger or an angle: of them in the joist.", func(e *JoistEnds) *Count { return &e.InJoist }),
	quantity("spacing", measure.Length, "5 mm", "0.5 m", "", "Between them, centre to centre, in their upright row.", func(e *JoistEnds) *Quantity { return &e.Spacing }),
	quantity("edge", measure.Length, "5 mm", "0.5 m", "", "From the outermost of them to the nearer edge of joist or rim.", func(e *JoistEnds) *Quantity { return &e.Edge }),
	quantity("end", measure.Length, "5 mm", "1 m", "", "Of an angle: from the joist's end to its nearest bolt.", func(e *JoistEnds) *Quantity { return &e.End }),
	quantity("steel", measure.Length, "0.5 mm", "20 mm", "", "Thickness of the hanger's or the angle's steel.", func(e *JoistEnds) *Quantity { return &e.Steel }),
	word("finish", finishes, "", "Coating or metal of the fasteners, by their box.", func(e *JoistEnds) *Name { return &e.Finish }),
	word("bracket_finish", finishes, "", "Coating or metal of the hanger or the angle, by its label.", func(e *JoistEnds) *Name { return &e.Bracket }),
	quantity("down", measure.Force, "0 N", "1e6 N", "", "Printed by the maker: what one carries down.", func(e *JoistEnds) *Quantity { return &e.Down }),
	quantity("up", measure.Force, "0 N", "1e6 N", "", "Printed by the maker: what one holds against uplift; none printed is 0.", func(e *JoistEnds) *Quantity { return &e.Up }),
	quantity("lateral", measure.Force, "0 N", "1e6 N", "", "Printed by the maker: along the rim; none printed is 0.", func(e *JoistEnds) *Quantity { return &e.Lateral }),
	quantity("along", measure.Force, "0 N", "1e6 N", "", "Printed by the maker: the joist pulled off the rim; none printed is 0.", func(e *JoistEnds) *Quantity { return &e.Along }),
	quantity("to_and_fro", measure.Force, "0 N", "1e6 N", "", "Printed by the maker: a force that turns about with each wave; none printed is 0.", func(e *JoistEnds) *Quantity { return &e.ToAndFro }),
	named("printed_for", "1.6", "Duration factor that the figures are printed for.", []string{"1", "1.15", "1.25", "1.6"}, []string{"ten years", "snow, two months", "seven days", "ten minutes"}, func(e *JoistEnds) *Name { return &e.For }),
	choice("screws_listed", "no", "Whether the maker lists these screws in place of the hanger's nails.", yesNo, func(e *JoistEnds) *Name { return &e.Listed }),
}

var tieFields = []field[Tie]{
	word("floats", whose, "all", "Which floats.", func(t *Tie) *Name { return &t.Floats }),
	choice("of", "", "What the tie is made of.", []string{"rope", "chain", "wire rope", "strap"}, func(t *Tie) *Name { return &t.Of }),
	quantity("strength", measure.Force, "10 N", "1e6 N", "", "Least breaking load of one part, wet, by its maker; never an average.", func(t *Tie) *Quantity { return &t.Strength }),
	quantity("efficiency", measure.Percent, "1 %", "100 %", "", "What its weakest end (knot, clip, sleeve) leaves of that.", func(t *Tie) *Quantity { return &t.Efficiency }),
	count("parts", 1, 20, "1", "Parts side by side that hold one float.", func(t *Tie) *Count { return &t.Parts }),
	plausible(choice("rounded", "no", "Whether every bend lies over a thimble or a rounded edge.", yesNo, func(t *Tie) *Name { return &t.Rounded }), "yes", "no"),
	quantity("point", measure.Force, "0 N", "1e6 N", "", "What the lip, hole or eye that it is made to may carry, if somebody able to judge has said so.", func(t *Tie) *Quantity { return &t.Point }),
	plausible(quantity("slack", measure.Length, "0 mm", "1 m", "1 in", "How far the float drops before the tie comes taut.", func(t *Tie) *Quantity { return &t.Slack }), "0 in", "3 in"),
	quantity("stiffness", measure.LineLoad, "100 N/m", "1e8 N/m", "", "A pull on the tie over how far it stretches under it; needed where there is slack.", func(t *Tie) *Quantity { return &t.Stiffness }),
	plausible(quantity("drag", measure.Force, "0 N", "1e5 N", "60 lbf", "What waves, current and wash pull sideways on one float.", func(t *Tie) *Quantity { return &t.Drag }), "30 lbf", "120 lbf"),
	word("finish", finishes, "", "Of chain or wire rope: its coating or metal.", func(t *Tie) *Name { return &t.Finish }),
}

var drumFields = []field[Drum]{
	word("floats", whose, "all", "Which floats.", func(d *Drum) *Name { return &d.Floats }),
	choice("held", "", "What they held before. Unknown: no drilling, cutting or welding, and no answer.", []string{"nothing", "food", "soap", "oil or fuel", "poison or solvent"}, func(d *Drum) *Name { return &d.Held }),
	choice("leak_tested", "", "Whether each was closed and held under water, or filled and left standing, without a bubble or a drop.", yesNo, func(d *Drum) *Name { return &d.LeakTested }),
	choice("bungs", "", "Where the bungs are: in the ends, level with each other at the two sides of the axis; one above the other; or in the side wall.", []string{"level at the sides", "one above the other", "in the side wall"}, func(d *Drum) *Name { return &d.Bungs }),
	quantity("closed_at", measure.Temperature, "-40 C", "50 C", "", "Temperature of the air in them when the bungs went in.", func(d *Drum) *Quantity { return &d.Closed }),
	plausible(quantity("coldest", measure.Temperature, "-60 C", "20 C", "-30 C", "Coldest that they get, on the winter's ice or on shore.", func(d *Drum) *Quantity { return &d.Coldest }), "-40 C", "-15 C"),
	plausible(quantity("hottest", measure.Temperature, "0 C", "60 C", "50 C", "Hottest that they get, on shore in the sun.", func(d *Drum) *Quantity { return &d.Hottest }), "60 C", "35 C"),
	quantity("suction", measure.Pressure, "0 kPa", "100 kPa", "", "Suction that they bear, if the maker or somebody able to judge has said so.", func(d *Drum) *Quantity { return &d.Suction }),
	quantity("pressure", measure.Pressure, "0 kPa", "500 kPa", "", "Pressure that they bear, if the maker or somebody able to judge has said so.", func(d *Drum) *Quantity { return &d.Blown }),
	plausible(choice("watched", "no", "Whether each is opened and looked into every year.", yesNo, func(d *Drum) *Name { return &d.Watched }), "yes", "no"),
	quantity("leak", measure.Mass, "0 kg", "2000 kg", "", "Most water found in one; counts only where they are watched.", func(d *Drum) *Quantity { return &d.Leak }),
}
