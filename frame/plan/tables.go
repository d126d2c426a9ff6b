package plan

import "example.org/floewright/lumber/measure"

// The tables below are the plan file: every field, in the order in which it is
// explained. A default is the cautious value that stands in.

var yesNo = []string{"yes", "no"}

var planFields = []field[Plan]{
	required(word("name", "a text", "", "What the dock is called.", func(p *Plan) *Name { return &p.Name })),
	choice("units", "us", "Units of the printed sheet.", []string{"us", "si"}, func(p *Plan) *Name { return &p.Units }),
	word("currency", "a text", "", "Label printed beside prices.", func(p *Plan) *Name { return &p.Currency }),
	required(section("frame", "The lumber.", frameFields, func(p *Plan) *Frame { return &p.Frame })),
	required(sections("floats", "Drums or blocks, one entry for each kind.", floatFields, func(p *Plan) *[]Floats { return &p.Floats })),
	sections("weights", "Things fixed to the dock: ladder, bench, bumpers.", weightFields, func(p *Plan) *[]Weight { return &p.Weights }),
	sections("people", "Everyone who may be aboard at once.", personFields, func(p *Plan) *[]Person { return &p.People }),
	section("loads", "What the dock is to carry.", loadFields, func(p *Plan) *Loads { return &p.Loads }),
	section("site", "The lake and its shore.", siteFields, func(p *Plan) *Site { return &p.Site }),
	section("ice", "The sheet as drilled, and what it is to carry.", iceFields, func(p *Plan) *Ice { return &p.Ice }),
	section("hardware", "What holds it together: joists' ends, ties, and what is known of the drums.", hardwareFields, func(p *Plan) *Hardware { return &p.Hardware }),
	sections("stock", "Lumber in hand, and lengths that can be bought.", boardFields, func(p *Plan) *[]Board { return &p.Stock }),
	section("mooring", "Wind and water, and what holds the dock.", mooringFields, func(p *Plan) *Mooring { return &p.Mooring }),
	section("alongside", "The boat that comes alongside, and the fenders.", alongsideFields, func(p *Plan) *Alongside { return &p.Alongside }),
	section("season", "The lake's winters, as remembered.", seasonFields, func(p *Plan) *Season { return &p.Season }),
	section("local", "Limits of the lake's authority, and permits.", localFields, func(p *Plan) *Local { return &p.Local }),
	section("shop", "The saw, the bill, coatings, and how things get to the lake.", shopFields, func(p *Plan) *Shop { return &p.Shop }),
}

var frameFields = []field[Frame]{
	required(quantity("length", measure.Length, "1 m", "60 m", "", "Length over the outside of the frame, by tape.", func(f *Frame) *Quantity { return &f.Length })),
	required(quantity("width", measure.Length, "0.6 m", "20 m", "", "Width over the outside of the frame, by tape.", func(f *Frame) *Quantity { return &f.Width })),
	choice("joists_run", "across", "The way the joists run; the decking crosses them.", []string{"across", "along"}, func(f *Frame) *Name { return &f.Run }),
	plausible(quantity("moisture", measure.Percent, "8 %", "200 %", "60 %", "Water in the wood in service, as a share of the dry wood's weight. Treated lumber over water stays near the default.", func(f *Frame) *Quantity { return &f.Moisture }), "19 %", "100 %"),
	required(section("joists", "Members between the rims; the first and the last close the frame.", joistFields, func(f *Frame) *Joists { return &f.Joists })),
	required(section("rims", "Members along the two sides that the joists' ends meet.", rimFields, func(f *Frame) *Rims { return &f.Rims })),
	required(section("decking", "Deck boards.", deckingFields, func(f *Frame) *Decking { return &f.Decking })),
	plausible(quantity("hardware", measure.Mass, "0 kg", "2000 kg", "40 kg", "Bolts, brackets and screws together, by the boxes' weight.", func(f *Frame) *Quantity { return &f.Hardware }), "10 kg", "80 kg"),
}

// woodFields returns the fields that joists, rims and decking share.
func woodFields[T any](get func(*T) *Wood) []field[T] {
	return []field[T]{
		required(word("size", `a nominal size such as "2x8", or the dressed one such as "38 mm x 184 mm"`, "", "Size of the lumber.", func(t *T) *Name { return &get(t).Size })),
		plausible(word("species", "the species on the stamp", "", "Species or species group on the grade stamp. Unknown: the weakest of the yard's group.", func(t *T) *Name { return &get(t).Species }), "Southern Pine", "Douglas Fir-Larch", "Hem-Fir", "Spruce-Pine-Fir"),
		plausible(word("grade", "the grade on the stamp", "No.2", "Grade on the stamp.", func(t *T) *Name { return &get(t).Grade }), "No.1", "No.3"),
		plausible(choice("incised", "yes", "Whether the faces show rows of slits from treatment.", yesNo, func(t *T) *Name { return &get(t).Incised }), "yes", "no"),
		quantity("weighed", measure.Mass, "0.2 kg", "500 kg", "", "One piece on a bathroom scale, as cut; replaces the weight by table.", func(t *T) *Quantity { return &get(t).Weighed }),
	}
}

var joistFields = append(woodFields(func(j *Joists) *Wood { return &j.Wood }),
	quantities("marks", measure.Length, "0 m", "60 m", "Running marks from one end, in order, all from the same hook of the tape.", func(j *Joists) *[]Quantity { return &j.Marks }),
	choice("marks_at", "near face", "Whether a mark is a joist's face nearest the tape's hook, or its centre.", []string{"near face", "centre"}, func(j *Joists) *Name { return &j.MarksAt }),
	quantity("spacing", measure.Length, "0.15 m", "2 m", "", "Shorthand for marks: one distance, centre to centre, from the first joist; the last closes the frame.", func(j *Joists) *Quantity { return &j.Spacing }),
)

var rimFields = append(woodFields(func(r *Rims) *Wood { return &r.Wood }),
	count("plies", 1, 3, "1", "Boards side by side in each rim.", func(r *Rims) *Count { return &r.Plies }),
)

var deckingFields = append(woodFields(func(d *Decking) *Wood { return &d.Wood }),
	quantity("gap", measure.Length, "0 mm", "25 mm", "0 mm", "Gap between boards as laid; wet boards are laid tight.", func(d *Decking) *Quantity { return &d.Gap }),
	word("screw", "a name from the trade with its length, such as \"No.10 x 3 wood screw\"", "", "Screw or nail through the boards.", func(d *Decking) *Name { return &d.Screw }),
	count("screws", 1, 6, "2", "Of them through one board into one joist.", func(d *Decking) *Count { return &d.Screws }),
)

var floatFields = []field[Floats]{
	required(word("name", "a text", "", "What these floats are called on the sheet.", func(f *Floats) *Name { return &f.Name })),
	required(choice("shape", "", "A drum on its side, or a rectangular block.", []string{"drum", "block"}, func(f *Floats) *Name { return &f.Shape })),
	quantity("girth", measure.Length, "0.6 m", "5 m", "", "Of a drum: the tape once around its body, between the hoops.", func(f *Floats) *Quantity { return &f.Girth }),
	required(quantity("length", measure.Length, "0.3 m", "6 m", "", "Of a drum, over its ends; of a block, the way it lies.", func(f *Floats) *Quantity { return &f.Length })),
	quantity("width", measure.Length, "0.1 m", "6 m", "", "Of a block.", func(f *Floats) *Quantity { return &f.Width }),
	quantity("height", measure.Length, "0.1 m", "3 m", "", "Of a block.", func(f *Floats) *Quantity { return &f.Height }),
	required(quantity("mass", measure.Mass, "0.5 kg", "2000 kg", "", "One float, empty, on a scale.", func(f *Floats) *Quantity { return &f.Mass })),
	plausible(choice("material", "plastic", "Of a drum: what it is made of. Where its volume is not known, a plastic one counts for 84 % of the cylinder of its girth and length, since its ends taper, one of steel for all of it.", []string{"steel", "plastic"}, func(f *Floats) *Name { return &f.Of }), "steel", "plastic"),
	quantity("volume", measure.Volume, "10 L", "12000 L", "", "Of a drum: its outside volume, which is what pushes up. Weighed brimful of water and empty, the difference is the water in it, which says a little less: a litre for each kilogram, a gallon for each eight pounds and a third.", func(f *Floats) *Quantity { return &f.Volume }),
	required(choice("lies", "", "The long way of the float.", []string{"along", "across"}, func(f *Floats) *Name { return &f.Lies })),
	required(choice("bears", "", "Whether it sits up between two joists or under their lower edges.", []string{"between joists", "under joists"}, func(f *Floats) *Name { return &f.Bears })),
	counts("bays", 1, 400, "Of floats between joists: the bays they fill; bay 1 is between joists 1 and 2.", func(f *Floats) *[]Count { return &f.Bays }),
	quantities("marks", measure.Length, "0 m", "60 m", "With bays: the floats' centres in each bay, from the side where the tape hooks.", func(f *Floats) *[]Quantity { return &f.Marks }),
	sections("places", "Instead of bays and marks: the centre of each float.", placeFields, func(f *Floats) *[]Place { return &f.Places }),
	choice("tied", "no", "Whether ties hold them: from dropping out when the water falls or the dock is lifted, and under joists from sliding too.", yesNo, func(f *Floats) *Name { return &f.Tied }),
	quantity("stops", measure.Length, "0.3 m", "60 m", "", "Of floats between joists: clear distance between the stops at the two ends of the row in a bay. Left out: there are none.", func(f *Floats) *Quantity { return &f.Stops }),
	choice("blocks", "no", "Of floats between joists: whether a piece of joist, set from joist to joist, stands close to each end of every float that has room to slide there.", yesNo, func(f *Floats) *Name { return &f.Blocks }),
	word("block_fastener", "a name from the trade with its length, such as \"16d common nail\"", "", "Of stops and blocks: the nails or screws through the joist into their ends.", func(f *Floats) *Name { return &f.Nail }),
	count("block_fasteners", 1, 20, "", "Of them at each end of a stop or a block.", func(f *Floats) *Count { return &f.Nails }),
	quantity("top_below_joists", measure.Length, "-0.6 m", "0.6 m", "", "Measured: the float's top below (negative: above) the joists' lower edge. Left out: worked out from its seat.", func(f *Floats) *Quantity { return &f.Top }),
}

var placeFields = []field[Place]{
	required(quantity("along", measure.Length, "0 m", "60 m", "", "From the end where the tape hooks.", func(p *Place) *Quantity { return &p.Along })),
	required(quantity("across", measure.Length, "0 m", "20 m", "", "From the side where the tape hooks.", func(p *Place) *Quantity { return &p.Across })),
}

var weightFields = []field[Weight]{
	required(word("name", "a text", "", "What it is.", func(w *Weight) *Name { return &w.Name })),
	required(quantity("mass", measure.Mass, "0.1 kg", "5000 kg", "", "By scale or data sheet.", func(w *Weight) *Quantity { return &w.Mass })),
	required(quantity("along", measure.Length, "-3 m", "63 m", "", "Its centre, from the end where the tape hooks.", func(w *Weight) *Quantity { return &w.Along })),
	required(quantity("across", measure.Length, "-3 m", "23 m", "", "Its centre, from the side where the tape hooks.", func(w *Weight) *Quantity { return &w.Across })),
	plausible(quantity("above", measure.Length, "-2 m", "5 m", "1 m", "Its centre above the deck; below is negative.", func(w *Weight) *Quantity { return &w.Above }), "-1 m", "1.5 m"),
	choice("ladder", "no", "Whether swimmers climb out by it.", yesNo, func(w *Weight) *Name { return &w.Ladder }),
}

var personFields = []field[Person]{
	required(word("who", "a text", "", "A word for the sheet: adult, child.", func(p *Person) *Name { return &p.Who })),
	count("count", 1, 200, "1", "How many alike.", func(p *Person) *Count { return &p.Count }),
	plausible(quantity("mass", measure.Mass, "5 kg", "250 kg", "185 lb", "Of one, dressed and wet.", func(p *Person) *Quantity { return &p.Mass }), "60 kg", "120 kg"),
}

var loadFields = []field[Loads]{
	plausible(quantity("flotation", measure.Pressure, "0.2 kPa", "10 kPa", "20 psf", "Uniform load that the floats must carry.", func(l *Loads) *Quantity { return &l.Flotation }), "30 psf"),
	plausible(quantity("deck", measure.Pressure, "0.2 kPa", "10 kPa", "40 psf", "Uniform load that the lumber must carry.", func(l *Loads) *Quantity { return &l.Deck }), "60 psf"),
	plausible(quantity("spot", measure.Mass, "50 kg", "1000 kg", "400 lb", "Load on one spot, not together with the uniform one.", func(l *Loads) *Quantity { return &l.Spot }), "500 lb"),
	plausible(quantity("snow", measure.Pressure, "0 kPa", "15 kPa", "40 psf", "Snow lying on the deck at its deepest; the building office knows the ground snow load.", func(l *Loads) *Quantity { return &l.Snow }), "20 psf", "70 psf"),
	plausible(quantity("uneven", measure.Length, "0 mm", "100 mm", "1/2 in", "How far one float or block may stand lower than its neighbours on the ice or on shore.", func(l *Loads) *Quantity { return &l.Uneven }), "1 in"),
	plausible(quantity("pried", measure.Length, "0 mm", "300 mm", "2 in", "How far one corner is pried up to free or to level the dock.", func(l *Loads) *Quantity { return &l.Pried }), "4 in"),
	plausible(quantity("cleat", measure.Force, "0 N", "1e6 N", "300 lbf", "Pull of one line at a corner in a storm; a mooring worked out says more.", func(l *Loads) *Quantity { return &l.Cleat }), "600 lbf"),
	plausible(quantity("bump", measure.Force, "0 N", "1e6 N", "500 lbf", "Push of a boat that comes alongside, over its fender, at a corner.", func(l *Loads) *Quantity { return &l.Bump }), "1000 lbf"),
	plausible(quantity("skid_friction", measure.Percent, "1 %", "200 %", "50 %", "Pull to drag the dock ashore, as a share of its weight.", func(l *Loads) *Quantity { return &l.Skid }), "70 %"),
	quantity("ice_push", measure.LineLoad, "0 N/m", "1e6 N/m", "", "Push of the ice along one side, if somebody able to judge has said so. Left out: not looked at, for a frame left in thick ice holds none.", func(l *Loads) *Quantity { return &l.IcePush }),
	plausible(quantity("crowd_from_edge", measure.Length, "0 m", "1 m", "6 in", "How far in from the edge a crowd stands.", func(l *Loads) *Quantity { return &l.FromEdge }), "0 in", "12 in"),
	plausible(quantity("person_centre", measure.Length, "0.2 m", "1.5 m", "1 m", "Height of a standing person's centre above the deck.", func(l *Loads) *Quantity { return &l.Centre }), "0.75 m", "1.1 m"),
}

var siteFields = []field[Site]{
	choice("water", "", "What the dock floats on.", []string{"lake", "river", "sea"}, func(s *Site) *Name { return &s.Water }),
	plausible(quantity("temperature", measure.Temperature, "0 C", "40 C", "25 C", "Of the water in summer: warm water is lighter.", func(s *Site) *Quantity { return &s.Temperature }), "4 C", "30 C"),
	plausible(quantity("wave_height", measure.Length, "0 m", "2 m", "12 in", "Trough to crest, of the waves and wakes that reach the dock, as seen against a stick.", func(s *Site) *Quantity { return &s.WaveHeight }), "18 in"),
	plausible(quantity("ten_crests", measure.Time, "5 s", "60 s", "20 s", "Time by stopwatch for ten crests to pass.", func(s *Site) *Quantity { return &s.TenCrests }), "15 s", "30 s"),
	plausible(quantity("ice_drop", measure.Length, "0 m", "2 m", "6 in", "How far the lake drops or rises under its ice with the dock frozen in.", func(s *Site) *Quantity { return &s.IceDrop }), "1 ft"),
	quantity("ice_grip", measure.Force, "0 N", "1e6 N", "", "Force with which the ice lets go of one float, if somebody able to judge has said so. Left out: it holds without limit.", func(s *Site) *Quantity { return &s.IceGrip }),
	quantity("level_low", measure.Length, "-20 m", "20 m", "", "Lowest level of the year against the day of measuring.", func(s *Site) *Quantity { return &s.LevelLow }),
	quantity("level_high", measure.Length, "-20 m", "20 m", "", "Highest level of the year against the day of measuring.", func(s *Site) *Quantity { return &s.LevelHigh }),
	quantity("depth", measure.Length, "0 m", "200 m", "", "Water under the dock on the day of measuring.", func(s *Site) *Quantity { return &s.Depth }),
	quantity("slope", measure.Percent, "0 %", "100 %", "", "Slope of the steepest part of the way to the lake, rise over level distance.", func(s *Site) *Quantity { return &s.Slope }),
	sections("shore_points", "Trees, bolts or posts a line may be tied to.", shoreFields, func(s *Site) *[]ShorePoint { return &s.Shore }),
}

var shoreFields = []field[ShorePoint]{
	required(word("name", "a text", "", "What it is called.", func(s *ShorePoint) *Name { return &s.Name })),
	word("kind", "a text", "", "Tree, bolt in rock, post.", func(s *ShorePoint) *Name { return &s.Kind }),
	quantity("along", measure.Length, "-500 m", "500 m", "", "Along the dock from its end where the tape hooks.", func(s *ShorePoint) *Quantity { return &s.Along }),
	quantity("across", measure.Length, "-500 m", "500 m", "", "Across the dock from its side where the tape hooks.", func(s *ShorePoint) *Quantity { return &s.Across }),
	quantity("above", measure.Length, "-20 m", "50 m", "", "Above the water on the day of measuring.", func(s *ShorePoint) *Quantity { return &s.Above }),
	quantity("strength", measure.Force, "100 N", "1e6 N", "", "What it holds, if somebody able to judge has said so.", func(s *ShorePoint) *Quantity { return &s.Strength }),
}

const dateTime = `a date and time such as "2027-01-16 09:30"`

var iceFields = []field[Ice]{
	moment("now", dateTime, "When the question is asked.", minuteForm, func(i *Ice) *Name { return &i.Now }),
	choice("season", "", "Winter ice is cold, sound and still grows; it is spring once the ice is dark, candled or wet on top.", []string{"winter", "spring"}, func(i *Ice) *Name { return &i.Season }),
	choice("cracks", "", "Cracks at the work and on the way: none, one, or crossing. The crack along the shore counts.", []string{"none", "one", "crossing"}, func(i *Ice) *Name { return &i.Cracks }),
	choice("wet", "", "Whether a wet crack, open water or water on the ice was found at the shore or on the way.", yesNo, func(i *Ice) *Name { return &i.Wet }),
	choice("inlets", "", "Whether an inlet, outlet, spring, current, ridge, log or pile is near.", yesNo, func(i *Ice) *Name { return &i.Inlets }),
	choice("changed", "", "Whether it thawed, rained or snowed, or the level moved, since the holes were drilled.", yesNo, func(i *Ice) *Name { return &i.Changed }),
	sections("holes", "Drilled holes, six at least, each at a place of its own: the four corners of the pad, round the dock; its middle; and on the walk from shore, one within 30 m (100 ft) of the pad.", holeFields, func(i *Ice) *[]Hole { return &i.Holes }),
	sections("weather", "High and low of each of the five days right before now, each once, in any order; today's so far may be added.", weatherFields, func(i *Ice) *[]Weather { return &i.Weather }),
	section("crossing", "The heaviest thing that crosses at one spot.", crossingFields, func(i *Ice) *Crossing { return &i.Cross }),
	plausible(quantity("snow_to_come", measure.Length, "0 m", "3 m", "6 in", "Further snow that may fall on the ice and on the dock while it stands there.", func(i *Ice) *Quantity { return &i.Snow }), "0 in", "12 in"),
	quantity("since", measure.Time, "0 h", "180 days", "0 h", "How long the dock has stood on the ice already: 0 h while it is still to be set.", func(i *Ice) *Quantity { return &i.Since }),
	sections("gauge", "Water in the hole at the dock, read daily since it stands there: with a day of the last five left out there is no answer.", gaugeFields, func(i *Ice) *[]Gauge { return &i.Gauge }),
	quantity("parked", measure.Time, "1 h", "180 days", "", "How long the finished dock is still to stand on the ice, counted from now; what it has stood already is said by since, and both together are no more than 180 days.", func(i *Ice) *Quantity { return &i.Park }),
}

var holeFields = []field[Hole]{
	required(word("where", "a text", "", "Where it was drilled: the words corner, middle and walk tell the pad's corners, its middle and the way from shore.", func(h *Hole) *Name { return &h.Where })),
	moment("when", dateTime, "When it was drilled.", minuteForm, func(h *Hole) *Name { return &h.When }),
	required(quantity("clear", measure.Length, "0 m", "3 m", "", "Clear (black) ice, by a hooked rule in the hole; a gap in it is not ice.", func(h *Hole) *Quantity { return &h.Clear })),
	required(quantity("white", measure.Length, "0 m", "3 m", "", "White (snow) ice on top, frozen to the clear.", func(h *Hole) *Quantity { return &h.White })),
	choice("hard", "no", "Whether the white ice is hard, dark and frozen to the clear ice.", yesNo, func(h *Hole) *Name { return &h.Hard }),
	quantity("gap", measure.Length, "0 m", "2 m", "", "Slush, water or air between layers, all of it together; feel for it with the hook from the top of the hole down.", func(h *Hole) *Quantity { return &h.Gap }),
	quantity("layer", measure.Length, "0 m", "3 m", "", "Only where there is a gap: the thickest single layer of clear ice by itself, from its own top to its own underside. It counts alone, since layers never add; with a gap and without it there is no answer.", func(h *Hole) *Quantity { return &h.Layer }),
	quantity("water_below_top", measure.Length, "-1 m", "1 m", "", "Water level in the hole below the top of the ice; above is negative.", func(h *Hole) *Quantity { return &h.Water }),
	quantity("snow", measure.Length, "0 m", "3 m", "", "Snow lying on the ice.", func(h *Hole) *Quantity { return &h.Snow }),
	quantity("along", measure.Length, "-500 m", "500 m", "", "Where it is, along the dock as it stands or is to stand, from the end where the tape hooks.", func(h *Hole) *Quantity { return &h.Along }),
	quantity("across", measure.Length, "-500 m", "500 m", "", "Where it is, across the dock, from the side where the tape hooks.", func(h *Hole) *Quantity { return &h.Across }),
}

var gaugeFields = []field[Gauge]{
	required(moment("when", dateTime, "When it was read.", minuteForm, func(g *Gauge) *Name { return &g.When })),
	required(quantity("water_below_top", measure.Length, "-1 m", "1 m", "", "Water level in the hole below the top of the ice.", func(g *Gauge) *Quantity { return &g.Water })),
}

var weatherFields = []field[Weather]{
	required(moment("date", `a date such as "2027-01-16"`, "The day.", dayForm, func(w *Weather) *Name { return &w.Date })),
	required(quantity("high", measure.Temperature, "-60 C", "50 C", "", "Highest air temperature of the day.", func(w *Weather) *Quantity { return &w.High })),
	required(quantity("low", measure.Temperature, "-60 C", "50 C", "", "Lowest air temperature of the day.", func(w *Weather) *Quantity { return &w.Low })),
}

var crossingFields = []field[Crossing]{
	quantity("mass", measure.Mass, "20 kg", "100000 kg", "", "Everything on the spot together: sled, piece, and the people beside it; no less than the heaviest of the carry list with its carriers.", func(c *Crossing) *Quantity { return &c.Mass }),
	count("people", 1, 100, "", "People among it, as many as the carry list has for any one piece: more of them ask for thicker ice, and without their number there is no answer.", func(c *Crossing) *Count { return &c.People }),
}

var boardFields = []field[Board]{
	required(word("size", "a nominal or a dressed size, as for joists", "", "Size of the board.", func(b *Board) *Name { return &b.Size })),
	required(quantity("length", measure.Length, "0.2 m", "15 m", "", "True length by tape: stock runs long.", func(b *Board) *Quantity { return &b.Length })),
	count("count", 1, 10000, "1", "How many alike.", func(b *Board) *Count { return &b.Count }),
	price("price", "Price of one.", func(b *Board) *Quantity { return &b.Price }),
	count("lot", 1, 1000, "1", "How many are sold together, at so many times the price of one.", func(b *Board) *Count { return &b.Lot }),
	choice("have", "no", "Whether it is in hand.", yesNo, func(b *Board) *Name { return &b.Have }),
}
