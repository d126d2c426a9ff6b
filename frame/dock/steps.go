package dock

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

// A Step is one step of the work, in order from the office to the next autumn.
type Step struct {
	Stage string   // where and when: "In the garage"
	Do    string   // what is done
	Gates []string // what must be so before
	Stops []string // what ends it at once
	Rests []string // names of the report's checks, and paths of the plan, that it rests on
}

// The stages of the work.
const (
	before    = "Before the first cut"
	garage    = "In the garage"
	onTheIce  = "On the ice"
	launch    = "Break-up and launch"
	yearRound = "Through the year"
)

// square is how far apart a frame's two diagonals may be (common practice).
const square = measure.Inch / 4

// A work writes the steps of a dock from its report.
type work struct {
	*Dock
	r   *Report
	out []Step
}

// steps returns the order of work.
func (d *Dock) steps(r *Report) []Step {
	w := &work{Dock: d, r: r}
	w.beforeCutting()
	w.inGarage()
	w.onIce()
	w.launched()
	w.roundTheYear()
	return w.out
}

func (w *work) add(stage, do string, gates, stops, rests []string) {
	w.out = append(w.out, Step{stage, do, gates, stops, rests})
}

// check returns the first check whose name begins so.
func (w *work) check(begin string) measure.Check {
	c, err := w.r.find(begin)
	if err != nil {
		return measure.Check{Name: begin}
	}
	return c
}

// now says how a check stands on this sheet.
func (w *work) now(begin string) string {
	c := w.check(begin)
	return fmt.Sprintf("%s (on this sheet: %s)", c.Name, strings.ToLower(words(c)))
}

func (w *work) tape(x float64) string { return measure.Length.Format(x, w.units) }

// listed joins a list that may be long.
func listed(items []string, most int) string {
	if len(items) > most {
		return strings.Join(items[:most], "; ") + fmt.Sprintf("; and %d more", len(items)-most)
	}
	return strings.Join(items, "; ")
}

func (w *work) beforeCutting() {
	var ask []string
	for _, p := range w.Permits() {
		ask = append(ask, p.Ask+" ("+p.Whom+")")
	}
	w.add(before, "Ask in writing about: "+listed(ask, 20)+".", nil,
		[]string{"a no, or no answer by the day lumber is bought"}, []string{"Permits and notices still to ask about", "local"})
	var short, open []string
	for _, t := range w.r.Topics {
		for _, c := range t.Checks {
			switch c.Verdict() {
			case measure.Short:
				short = append(short, c.Name)
			case measure.NoAnswer:
				open = append(open, c.Name)
			}
		}
	}
	if len(short) > 0 {
		w.add(before, "Settle what is short, on paper, and make the sheet again: "+listed(short, 8)+".", nil, nil, nil)
	}
	if len(open)+len(w.r.Deciding) > 0 {
		var trust []string
		for _, a := range w.r.Deciding {
			trust = append(trust, a.Name)
		}
		text := "Measure what the sheet does not know"
		if len(trust) > 0 {
			text += ", first what a verdict turns on (" + listed(trust, 8) + ")"
		}
		w.add(before, text+fmt.Sprintf(", and make it again: %d checks have no answer.", len(open)), nil, nil, trust)
	}
}

func (w *work) inGarage() {
	gates := []string{"every office asked has answered"}
	rests := []string{"the purchase list", "Pieces without a board, of those in hand and listed to buy"}
	if s := w.r.Shop; s != nil && s.Bill.Err == nil {
		w.add(garage, fmt.Sprintf("Buy what the purchase list says, %s. Weigh a joist and a drum as they come.", s.Bill.total()), gates, nil, rests)
	} else {
		w.add(garage, "Buy what the purchase list says; not all of its prices are known. Weigh a joist and a drum as they come.", gates, nil, rests)
	}
	for i := range w.plan.Floats {
		set := &w.plan.Floats[i]
		name := called(set.Name, "float")
		if set.Shape.Value != "drum" {
			w.add(garage, fmt.Sprintf("Look over each %s and weigh it: whole, dry inside, its foam nowhere bare.", name), nil, nil, []string{set.Mass.Path})
			continue
		}
		w.drums(i, name)
	}
	cut := []string{"all boards are at hand and sorted: straight ones for the rims, crowns up"}
	if s := w.r.Shop; s != nil && s.Cutting.Err == nil {
		w.add(garage, fmt.Sprintf("Cut by the cut list, %d boards, the longest pieces first. Write its number on each piece.", len(s.Cutting.Boards)), cut, nil, []string{"the cut list", "shop.kerf"})
	} else {
		w.add(garage, "Cut joists, rims and boards to the lengths of the plan, the longest first. Write its number on each piece.", cut, nil, []string{"stock"})
	}
	if s := w.r.Shop; s != nil {
		for _, c := range s.Finish {
			if c.On == onEnds {
				coats := ""
				if c.Coats > 0 {
					coats = fmt.Sprintf(", %d coats,", c.Coats)
				}
				w.add(garage, fmt.Sprintf("Brush %s on every cut end%s and let it dry.", c.Name, coats), c.Gate, nil, []string{"shop.coatings"})
			}
		}
	}
	w.frame()
}

// frame lays the frame out, dry.
func (w *work) frame() {
	var marks []string
	for _, c := range w.centres {
		marks = append(marks, w.tape(c-w.joist.section.Width/2))
	}
	if len(marks) > 0 {
		side := "end"
		if !w.across {
			side = "side"
		}
		w.add(garage, fmt.Sprintf("Lay the rims side by side, hook the tape on the near %s and strike the joists' near faces on all of them at once: %s.", side, strings.Join(marks, ", ")),
			nil, nil, []string{w.marks().path})
	}
	if at := w.stayMarks(); at != "" {
		w.add(garage, "Strike the near faces of the stops and blocks on the two joists of each bay, "+w.tapeFrom()+": "+at+".", nil, nil, []string{"floats"})
	}
	if plan.Has(w.plan.Frame.Length) && plan.Has(w.plan.Frame.Width) {
		w.add(garage, fmt.Sprintf("Put the frame together dry on a flat floor. Both diagonals: %s.", w.tape(math.Hypot(w.Dock.length, w.width))),
			[]string{"all pieces cut and coated"},
			[]string{fmt.Sprintf("diagonals more than %s apart: push the corners of the longer one together until half of the difference is gone (common practice, no source)", w.tape(square))},
			[]string{"frame.length", "frame.width"})
	}
	w.add(garage, "Bore all holes, number both sides of every joint, take it apart, and stack it in the order it is needed.", nil, nil,
		[]string{"Joist's end carried by its rim", "the hardware list"})
}

func (w *work) onIce() {
	crossing := "Ice for one crossing"
	w.add(onTheIce, "Drill from the shore outward, hole by hole, then the middle and the four corners of the pad; measure clear and white ice, water and snow in every hole, feel in each for a gap between layers, and where there is one measure the thickest layer of clear ice by itself; write down hour and place of each.",
		[]string{"two people apart from each other, daylight, frost in the last days; life jackets on, chisel, picks and a rope at hand; somebody ashore knows where and until when"},
		[]string{"a hole thinner than the day's rule: nobody goes past it; water or slush where there was none; a crack that works; a thaw, rain, or a change of the water level"},
		[]string{crossing, "ice.holes"})
	const today = ", measured within 24 hours"
	gates := []string{w.now(crossing) + today}
	// From the first float on, the dock and its crew stand there together: each later step
	// opens on that ice of its own day.
	whole, people := w.check("Ice for the finished dock parked").Name, w.check("Ice for the people at the dock").Name
	standing := []string{fmt.Sprintf("the ice under the finished dock and the people at it%s (on this sheet: %s; %s)",
		today, strings.ToLower(words(w.check(whole))), strings.ToLower(words(w.check(people))))}
	sameIce := []string{"the ice of that day, as for the floats"}
	w.add(onTheIce, "Clear the pad evenly, banks of snow far from it. Lay boards under whatever is dark: it melts in.", gates, nil, []string{crossing})
	if h, ok := w.heaviestPiece(); ok {
		do := fmt.Sprintf("Carry the pieces down one by one, no pile on the way. The heaviest is a %s, %s, for %s", h.Piece, measure.Mass.Format(h.Each, w.units), heads(h.People))
		var stops []string
		if h.Err != nil {
			if h.People > 0 {
				stops = append(stops, "fewer than "+heads(h.People)+" to lift it")
			} else {
				stops = append(stops, measure.RestateError(h.Err, w.system()).Error())
			}
		}
		if h, ok := w.heaviestSled(); ok && h.Brake > 0 {
			do += fmt.Sprintf("; on the slope %d hold the heaviest sled, of %s with %s, back with %s", h.Crew, h.Piece, measure.Mass.Format(h.Load, w.units), measure.Force.Format(h.Brake, w.units))
			stops = append(stops, "a sled that runs by itself: let it go, nobody below it")
		}
		carried := slices.Clone(gates)
		if _, load := w.crosses(); load != nil {
			says := "the plan has less"
			if errors.Is(load, measure.ErrUnknown) {
				says = "the plan does not say as much"
			}
			most, crowd, _ := w.heaviestGoes()
			carried = append(carried, fmt.Sprintf("the sheet was made for the heaviest that goes out: ice.crossing %s with %s, the sled's own weight and what is not weighed yet beside it; %s", measure.Mass.Format(most.mass, w.units), heads(max(most.people, crowd.people)), says))
		}
		carried = append(carried, standing...) // all of it lies there in the end
		w.add(onTheIce, do+". Lay them apart on the pad, never on one stack.", carried, stops, []string{"the carry list", "Weight of one " + h.Piece, "ice.crossing"})
	}
	w.anchors(gates)
	uneven := "loads.uneven"
	w.add(onTheIce, fmt.Sprintf("Set the floats at their marks; shim until none is more than %s low.", w.tape(w.plan.Loads.Uneven.Value)),
		standing, nil, []string{"What each float bears on", uneven, whole, people})
	w.add(onTheIce, "Set rims and joists on them, fasten every joist's end, measure both diagonals again before the first board.",
		sameIce, []string{"a joist whose end has not all of its fasteners: nobody stands on it"},
		[]string{"Joist's end carried by its rim", "Joist pulled off its rim"})
	if at := w.stayMarks(); at != "" {
		nails := ""
		for i := range w.plan.Floats {
			if set := &w.plan.Floats[i]; set.Nail.Value != "" && set.Nails.Value > 0 {
				nails = fmt.Sprintf(", %d x %s through the joist into each end", set.Nails.Value, set.Nail.Value)
				break
			}
		}
		w.add(onTheIce, "Nail the stops and blocks between the joists at their marks, "+w.tapeFrom()+nails+": "+at+".",
			append(slices.Clone(sameIce), "all joists' ends are fastened, and each float lies at its mark"), nil, []string{"Nails at an end of a stop or block"})
	}
	w.add(onTheIce, "Tie every float to what the plan says.", append(slices.Clone(sameIce), "all joists' ends are fastened"), nil, []string{"Ties, and what is owed to the drums"})
	w.lay(sameIce)
	var things []string
	for i := range w.plan.Weights {
		things = append(things, called(w.plan.Weights[i].Name, "a weight"))
	}
	if len(things) > 0 {
		w.add(onTheIce, "Fix the rest: "+listed(things, 10)+".", append(slices.Clone(sameIce), "the boards are on"), nil, []string{"weights"})
	}
	w.add(onTheIce, "Make every line fast with slack for the highest spring water; mark both ends.",
		sameIce, nil, []string{"Lowest level to which every line is neither slack nor taut", "Highest level to which every line is neither slack nor taut"})
	stay := w.check("Ice under the finished dock that stands there for days or weeks")
	w.add(onTheIce, "Read the water in a hole beside the dock every day and write it down; shovel the deck, and carry the snow away.",
		append(slices.Clone(sameIce), w.now(stay.Name)),
		[]string{"water over the ice, rising toward its top, or falling away under it: everybody off the ice and keep off; the dock is not worth it"}, []string{stay.Name, people})
}

// lay lays the deck.
func (w *work) lay(gates []string) {
	c := w.check("Boards that must be on over each float before the ice goes")
	do := "Lay the boards from one end to the other."
	var rows []string
	for _, n := range c.Notes {
		if strings.Contains(n, "rows") {
			rows = append(rows, n)
		}
	}
	if len(rows) > 0 {
		do = "Lay the boards from one end to the other, but first, over each float: " + listed(rows, 30) + "."
	}
	w.add(onTheIce, do, append(slices.Clone(gates), "both diagonals agree, and every float is tied"),
		[]string{"thaw, or water over the ice: everybody off the ice, whatever is not on yet; a dock without the boards that must be on may break up from below, and is not worth a person"}, []string{c.Name})
}

func (w *work) launched() {
	last := "in good time, weeks before the ice goes: nobody can say on which day"
	set, err := w.offIceDay()
	early, known := w.lastWalk(w.r.Season)
	fixed := err == nil && !(known && early.Before(set)) // the earlier of them counts
	now, _ := w.asking()
	do := "Bring everything loose ashore. Look at every line, tie and bung a last time."
	switch {
	case known && !now.Before(early):
		last = "the last day for it, " + early.Format(time.DateOnly) + ", two weeks before the ice is out in one winter of ten, is over on " + now.Format(time.DateOnly) + ": nobody goes out for it"
		do = "What is loose out there stays there. Look at lines and ties from the shore."
	case fixed:
		last = "well before " + set.Format(time.DateOnly) + ", the last day set for things on the ice, and weeks before the ice goes: nobody can say on which day"
		if known {
			last = "well before " + set.Format(time.DateOnly) + ", the last day set for things on the ice, and " + early.Format(time.DateOnly) + ", two weeks before the ice is out in one winter of ten"
		}
	case known:
		last = "by " + early.Format(time.DateOnly) + " at the latest, two weeks before the ice is out in one winter of ten"
	}
	if errors.Is(err, measure.ErrRange) {
		last += "; " + err.Error()
	}
	rests := []string{"local.off_ice_by"}
	if slices.ContainsFunc(w.r.Topics, func(t Topic) bool { return t.Title == "THE SEASON" }) {
		rests = append(rests, "THE SEASON")
	}
	w.add(launch, do, []string{last, w.now("Ice for one crossing") + ", and the ice of that day as for the floats; else look from the shore"},
		[]string{"from the first open water at the shore on nobody goes out, whatever the dock does"}, rests)
	w.add(launch, "Leave it alone while it breaks free.", nil, []string{"a line that takes a load: it kills when it parts"}, []string{"Lines, and the bottom at low water"})
	if l, err := w.Launch(); err == nil {
		var at, within []string
		for _, c := range l.Corners {
			at = append(at, c.Name+" "+w.tape(c.Height))
			within = append(within, c.Name+": "+w.tape(c.Within))
		}
		much := "more than " + w.tape(l.Corners[0].Within)
		for _, c := range l.Corners[1:] {
			if w.tape(c.Within) != w.tape(l.Corners[0].Within) {
				much = "more than its own limit (" + strings.Join(within, "; ") + ")"
			}
		}
		w.add(launch, "From a boat or from shore, measure the height of the deck's four corners over the water. Expected: "+strings.Join(at, ", ")+".",
			[]string{"open water, little wind, a life jacket on"},
			[]string{fmt.Sprintf("one corner lower than that by %s, or all of them: a float has come loose or takes in water, nobody goes aboard; a float in the middle hardly shows at the corners: look at each", much)},
			[]string{"Draft of the deepest float with nobody aboard"})
	}
	w.add(launch, "Load it slowly: one in the middle, then all, then toward an edge, never more than the sign says. Put up the sign.",
		[]string{"the sign does not forbid itself; else nobody aboard but whoever mends it, one at a time", "its corners are where they should be; the water beside it is free of ice; life jackets on, somebody ashore with a line and a boat"},
		[]string{"the near edge comes to the water; something slips or cracks"}, []string{w.check("Everyone together at one edge").Name})
}

// corners names the deck's corners in the order of [float.Platform]'s.
var corners = [4]string{"near end, near side", "far end, near side", "far end, far side", "near end, far side"}

func (w *work) roundTheYear() {
	if s := w.r.Shop; s != nil {
		for _, c := range s.Finish {
			if c.On != onEnds {
				w.add(yearRound, fmt.Sprintf("Put %s on %s, not before early summer: boards that wintered under snow are wet for weeks.", c.Name, c.On), c.Gate, nil, []string{"shop.coatings"})
			}
		}
	}
	w.add(yearRound, "After the first storm and every month: ties, bungs, lines where they chafe, joists' ends, the height of the corners.", nil,
		[]string{"a float full of water or a joist off its rim: nobody aboard until it is mended"}, []string{"A float lost, and a rest whatever comes", "Joist's end to and fro in waves"})
	if plan.Has(w.plan.Site.LevelLow) {
		w.add(yearRound, fmt.Sprintf("When the water changes: set each line in steps for the new level, longer where it comes taut, shorter where it hangs slack; at %s under the level of the plan look at the bottom.", w.tape(math.Abs(w.plan.Site.LevelLow.Value))),
			nil, nil, []string{"Depth at low water in a wave's trough, against the draft"})
	}
	autumn := []string{"haul the dock out if it can be"}
	for _, c := range action.Autumn() {
		if c.Status == measure.CommonPractice {
			autumn = append(autumn, measure.Restate(c.Text, w.system()))
		}
	}
	w.add(yearRound, "Before the lake freezes: "+strings.Join(autumn, "; ")+".", []string{"boats are off the lake, no ice yet at the shore"}, nil,
		[]string{"site.ice_drop", "loads.ice_push"})
}

// closing says at which temperature drums of a kind are closed.
func (w *work) closing(name string) string {
	for i := range w.plan.Hardware.Drums {
		of := &w.plan.Hardware.Drums[i]
		if (of.Floats.Value == name || of.Floats.Value == "all") && plan.Has(of.Closed) {
			return measure.Temperature.Format(of.Closed.Value, w.units)
		}
	}
	return "a temperature written down"
}

// heaviestPiece returns what weighs most of all that is carried; hardware comes in boxes.
func (w *work) heaviestPiece() (Haul, bool) {
	return w.heaviest(func(h Haul) float64 {
		if h.Piece == "hardware" {
			return 0
		}
		return h.Each
	})
}

// heaviestSled returns what makes the heaviest sled of all that is carried.
func (w *work) heaviestSled() (Haul, bool) {
	return w.heaviest(func(h Haul) float64 { return h.Load })
}

// heaviest returns the row of the carry list that has the most of something, the first
// of equals.
func (w *work) heaviest(by func(Haul) float64) (Haul, bool) {
	var out Haul
	if w.r.Shop == nil {
		return out, false
	}
	for _, h := range w.r.Shop.Carry {
		if by(h) > by(out) {
			out = h
		}
	}
	return out, by(out) > 0
}
