package plan

import "example.org/floewright/lumber/measure"

var corners = []string{"near end, near side", "near end, far side", "far end, near side", "far end, far side"}

var mooringFields = []field[Mooring]{
	quantity("wind_speed", measure.Speed, "1 mph", "150 mph", "", "The storm the mooring is to hold in, as forecast or measured over open water; below a strong breeze, 24 mph as the mean of ten minutes, nothing is said to hold.", func(m *Mooring) *Quantity { return &m.Wind }),
	plausible(quantity("wind_averaging", measure.Time, "1 s", "10 h", "1 h", "Time over which that wind is the mean; a gust is 3 s.", func(m *Mooring) *Quantity { return &m.WindMean }), "10 min"),
	plausible(quantity("wind_height", measure.Length, "1 ft", "65 ft", "33 ft", "Height above the water at which it was measured; forecasts are for 10 m (33 ft).", func(m *Mooring) *Quantity { return &m.WindHeight }), "10 ft"),
	count("wind_years", 1, 1000, "", "In how many years such a wind comes once, if whoever keeps the records has said so; printed beside the checks.", func(m *Mooring) *Count { return &m.WindYears }),
	quantity("bearing", measure.Angle, "0 deg", "360 deg", "", "By compass, looking along the dock from the end where the tape hooks; its far side is then on the left.", func(m *Mooring) *Quantity { return &m.Bearing }),
	section("fetch", "Open water seen from the dock, off a map, by direction. All eight, or none: then the waves are those seen.", fetchFields, func(m *Mooring) *Fetch { return &m.Fetch }),
	quantity("current", measure.Speed, "0 mph", "5 mph", "", "Of the water, by a stick and a stopwatch; 0 mph where it stands.", func(m *Mooring) *Quantity { return &m.Current }),
	quantity("current_to", measure.Angle, "0 deg", "360 deg", "", "The bearing in which it flows.", func(m *Mooring) *Quantity { return &m.Set }),
	sections("above", "What the wind pushes on besides the frame and the people: shed, bench with a back, boat alongside.", windageFields, func(m *Mooring) *[]Windage { return &m.Above }),
	sections("lines", "Every line from the dock to an anchor or the shore.", lineFields, func(m *Mooring) *[]Line { return &m.Lines }),
	sections("anchors", "What lies on the bottom.", anchorFields, func(m *Mooring) *[]Anchor { return &m.Anchors }),
	choice("hinged_to", "", "What the dock is pinned to.", []string{"nothing", "pier", "float"}, func(m *Mooring) *Name { return &m.HingedTo }),
	section("hinge", "The pins, where there are any.", hingeFields, func(m *Mooring) *Hinge { return &m.Hinge }),
	choice("has_ramp", "", "Whether a ramp lies on the dock.", yesNo, func(m *Mooring) *Name { return &m.HasRamp }),
	section("ramp", "The ramp, where there is one.", rampFields, func(m *Mooring) *Ramp { return &m.Ramp }),
	choice("hauled_out", "", "Whether the dock is pulled up the shore in autumn.", yesNo, func(m *Mooring) *Name { return &m.HauledOut }),
	section("haul_out", "How it is pulled up.", haulFields, func(m *Mooring) *HaulOut { return &m.Haul }),
}

func fetch(key, from string, get func(*Fetch) *Quantity) field[Fetch] {
	return quantity(key, measure.Length, "0 m", "100 km", "", "Open water to the "+from+".", get)
}

var fetchFields = []field[Fetch]{
	fetch("n", "north", func(f *Fetch) *Quantity { return &f.N }),
	fetch("ne", "north-east", func(f *Fetch) *Quantity { return &f.NE }),
	fetch("e", "east", func(f *Fetch) *Quantity { return &f.E }),
	fetch("se", "south-east", func(f *Fetch) *Quantity { return &f.SE }),
	fetch("s", "south", func(f *Fetch) *Quantity { return &f.S }),
	fetch("sw", "south-west", func(f *Fetch) *Quantity { return &f.SW }),
	fetch("w", "west", func(f *Fetch) *Quantity { return &f.W }),
	fetch("nw", "north-west", func(f *Fetch) *Quantity { return &f.NW }),
}

var windageFields = []field[Windage]{
	required(word("name", "a text", "", "What it is.", func(w *Windage) *Name { return &w.Name })),
	required(quantity("end_area", measure.Area, "0 m2", "200 m2", "", "Its outline as seen along the dock.", func(w *Windage) *Quantity { return &w.End })),
	required(quantity("side_area", measure.Area, "0 m2", "200 m2", "", "Its outline as seen across the dock.", func(w *Windage) *Quantity { return &w.Side })),
	required(quantity("height", measure.Length, "0 m", "15 m", "", "Of its middle above the water.", func(w *Windage) *Quantity { return &w.Height })),
}

var lineFields = []field[Line]{
	required(word("name", "a text", "", "What the line is called.", func(l *Line) *Name { return &l.Name })),
	choice("corner", "", "The corner of the dock it is made fast to.", corners, func(l *Line) *Name { return &l.Corner }),
	quantity("along", measure.Length, "0 m", "60 m", "", "Instead of the corner: the cleat's place along the dock.", func(l *Line) *Quantity { return &l.Along }),
	quantity("across", measure.Length, "0 m", "20 m", "", "Instead of the corner: the cleat's place across the dock.", func(l *Line) *Quantity { return &l.Across }),
	required(word("to", "the name of an anchor or a shore point", "", "What it runs to.", func(l *Line) *Name { return &l.To })),
	quantity("cleat_breaks", measure.Force, "100 N", "1e6 N", "", "Breaking load of the cleat or ring with its bolts, if its maker or somebody able to judge has said so.", func(l *Line) *Quantity { return &l.Cleat }),
	word("shackle", `a size such as "1/2 in", or "none"`, "", "The smallest shackle in the line.", func(l *Line) *Name { return &l.Shackle }),
	required(sections("pieces", "Rope, chain or wire, the first at the ground.", linePieceFields, func(l *Line) *[]LinePiece { return &l.Pieces })),
}

var linePieceFields = []field[LinePiece]{
	required(word("kind", `a kind such as "nylon 3-strand" or "chain grade 30"`, "", "What it is.", func(p *LinePiece) *Name { return &p.Kind })),
	required(word("size", `a size such as "3/4 in" or "12 mm"`, "", "Thickness of the rope or of the chain's wire.", func(p *LinePiece) *Name { return &p.Size })),
	required(quantity("length", measure.Length, "0.1 m", "500 m", "", "By tape, without pull.", func(p *LinePiece) *Quantity { return &p.Length })),
	required(quantity("mass", measure.Mass, "0.01 kg", "5000 kg", "", "The whole piece on a scale, dry.", func(p *LinePiece) *Quantity { return &p.Mass })),
	word("end", `the end's name such as "knot" or "eye splice on thimble"`, "knot", "Its weakest end, of rope and wire.", func(p *LinePiece) *Name { return &p.End }),
	quantity("stretch", measure.Percent, "0 %", "50 %", "0 %", "How much longer it gets under a tenth of its breaking load.", func(p *LinePiece) *Quantity { return &p.Stretch }),
}

var anchorFields = []field[Anchor]{
	required(word("name", "a text", "", "What it is called.", func(a *Anchor) *Name { return &a.Name })),
	quantity("along", measure.Length, "-500 m", "500 m", "", "Along the dock from its end where the tape hooks.", func(a *Anchor) *Quantity { return &a.Along }),
	quantity("across", measure.Length, "-500 m", "500 m", "", "Across the dock from its side where the tape hooks.", func(a *Anchor) *Quantity { return &a.Across }),
	quantity("depth", measure.Length, "0.1 m", "200 m", "", "Of the water there on the day of measuring, by a weighted line.", func(a *Anchor) *Quantity { return &a.Depth }),
	choice("kind", "", "A block that lies there, or one whose holding a pull test told.", []string{"dead weight", "tested"}, func(a *Anchor) *Name { return &a.Kind }),
	choice("material", "", "Of a dead weight.", []string{"concrete", "granite", "steel"}, func(a *Anchor) *Name { return &a.Material }),
	choice("bottom", "", "What a dead weight lies on, by what sticks to the lead.", []string{"rock", "gravel", "coarse sand", "sand", "fine sand", "silt", "stiff clay", "medium clay", "soft mud"}, func(a *Anchor) *Name { return &a.Bottom }),
	quantity("mass", measure.Mass, "1 kg", "100000 kg", "", "Dry, on a scale: what a dead weight holds by, and what goes over the ice of any.", func(a *Anchor) *Quantity { return &a.Mass }),
	quantity("holding", measure.Force, "100 N", "1e6 N", "", "Of a tested one: the pull at which it came, or did not come yet.", func(a *Anchor) *Quantity { return &a.Holding }),
	quantity("steepest", measure.Angle, "0 deg", "90 deg", "0 deg", "Steepest pull, above the level, at which it was tested.", func(a *Anchor) *Quantity { return &a.Steepest }),
}

var hingeFields = []field[Hinge]{
	choice("edge", "", "The edge of the dock that is pinned.", []string{"near end", "far end", "near side", "far side"}, func(h *Hinge) *Name { return &h.Edge }),
	count("pins", 2, 100, "", "How many.", func(h *Hinge) *Count { return &h.Pins }),
	quantity("width", measure.Length, "0.1 m", "60 m", "", "Between the outermost pins.", func(h *Hinge) *Quantity { return &h.Width }),
	quantity("diameter", measure.Length, "3 mm", "200 mm", "", "Of a pin.", func(h *Hinge) *Quantity { return &h.Diameter }),
	quantity("plate", measure.Length, "1 mm", "200 mm", "", "Thickness of the middle plate that each pin bears on.", func(h *Hinge) *Quantity { return &h.Plate }),
	quantity("height", measure.Length, "-1 m", "3 m", "", "Of the dock's pin line above the water, floating free.", func(h *Hinge) *Quantity { return &h.Height }),
	quantity("neighbour_height", measure.Length, "-5 m", "10 m", "", "Of the neighbour's pin line above the water on the day of measuring.", func(h *Hinge) *Quantity { return &h.Neighbour }),
	quantity("pin_breaks", measure.Force, "100 N", "1e7 N", "", "Breaking load of one pin with its bracket, if somebody able to judge has said so.", func(h *Hinge) *Quantity { return &h.Strength }),
}

var rampFields = []field[Ramp]{
	quantity("length", measure.Length, "0.3 m", "50 m", "", "From its shore hinge to its free end.", func(r *Ramp) *Quantity { return &r.Length }),
	quantity("mass", measure.Mass, "1 kg", "20000 kg", "", "On scales, both ends added.", func(r *Ramp) *Quantity { return &r.Mass }),
	quantity("shore_height", measure.Length, "-5 m", "20 m", "", "Of its shore hinge above the water on the day of measuring.", func(r *Ramp) *Quantity { return &r.Shore }),
	named("limit", "common", "Which limit of slope it is to keep.", []string{"accessible", "common", "navy"}, []string{"1 in 12", "1 in 3", "1 in 1.5"}, func(r *Ramp) *Name { return &r.Limit }),
}

var haulFields = []field[HaulOut]{
	quantity("slope", measure.Angle, "0 deg", "60 deg", "", "Of the skids or the beach, steepest part.", func(h *HaulOut) *Quantity { return &h.Slope }),
	count("parts", 1, 12, "1", "Of the tackle, each over a sheave.", func(h *HaulOut) *Count { return &h.Parts }),
	word("kind", "a kind of rope or wire, as for lines", "", "Of the hauling line.", func(h *HaulOut) *Name { return &h.Kind }),
	word("size", "a size, as for lines", "", "Of the hauling line.", func(h *HaulOut) *Name { return &h.Size }),
	word("end", "an end, as for lines", "knot", "Of the hauling line.", func(h *HaulOut) *Name { return &h.End }),
	quantity("holding", measure.Force, "100 N", "1e6 N", "", "Of what the winch hangs on, if somebody able to judge has said so.", func(h *HaulOut) *Quantity { return &h.Holding }),
}

var localFields = []field[Local]{
	quantity("reach", measure.Length, "0 m", "500 m", "", "From the shore, where the rule measures from, to the dock's outermost edge.", func(l *Local) *Quantity { return &l.Reach }),
	quantity("most_reach", measure.Length, "0 m", "500 m", "", "Farthest that the lake's authority accepts.", func(l *Local) *Quantity { return &l.MostReach }),
	quantity("most_area", measure.Area, "1 m2", "10000 m2", "", "Largest area over water that it accepts.", func(l *Local) *Quantity { return &l.MostArea }),
	quantity("setback", measure.Length, "0 m", "500 m", "", "From the dock to the neighbour's line, drawn out over the water.", func(l *Local) *Quantity { return &l.Setback }),
	quantity("least_setback", measure.Length, "0 m", "500 m", "", "Least that it accepts.", func(l *Local) *Quantity { return &l.LeastSetback }),
	moment("off_ice_by", `a date such as "2027-03-15"`, "Last day on which things may stand on the ice, this winter.", dayForm, func(l *Local) *Name { return &l.OffIce }),
	choice("drums", "", "What the drums are, if there are any.", []string{"none", "new", "reused"}, func(l *Local) *Name { return &l.Drums }),
	choice("flotation_rule", "", "What the authority accepts under a dock.", []string{"any", "no reused drums", "no drums"}, func(l *Local) *Name { return &l.Flotation }),
	choice("mains", "", "Whether mains electricity reaches the dock, by cord or cable.", yesNo, func(l *Local) *Name { return &l.Mains }),
	choice("offices_asked", "", "Whether every office on the sheet's list was asked and its answer is in hand.", yesNo, func(l *Local) *Name { return &l.Asked }),
}
