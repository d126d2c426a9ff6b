package sheet_test

import (
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

// cardText is what a card of a demo's pages says, its marks taken off.
func cardText(t *testing.T, from, to string, units measure.System, swaps ...string) string {
	t.Helper()
	page, err := pagesOf(t, "swim", units, swaps...).HTML()
	if err != nil {
		t.Fatal(err)
	}
	text := " " + strings.Join(strings.Fields(plain(page)), " ")
	at := strings.LastIndex(text, " "+from) // the contents name it too
	if at < 0 {
		t.Fatalf("no %q", from)
	}
	text = text[at:]
	if end := strings.Index(text, to); end > 0 {
		text = text[:end]
	}
	return text
}

// TestIceCardSaysWhatCounts: the card has the thaw, the cold snap and the cracks as the
// checks count them, as differences where they are some, its STOP on the first side, and
// no figure where no rule has one.
func TestIceCardSaysWhatCounts(t *testing.T) {
	card := func(units measure.System, swaps ...string) string {
		return cardText(t, "Ice card for the pocket", "Holes of the day", units, swaps...)
	}
	us := card(measure.US)
	for _, want := range []string{
		"one of the 4 days before yesterday reached 32.0 °F, its mean below that", "Stay off, however thick the ice, after 32.0 °F and more yesterday or today, or as the mean of one of the last 5 days",
		"fell by 18.0 F deg and more from one day to the next, to today, yesterday or the day before", "a dry crack near the load asks for 1.42 times", "Back to shore at once",
		"the crew with its load, 670 lb", "8 in",
	} {
		if !strings.Contains(strings.ToLower(us), strings.ToLower(want)) {
			t.Errorf("no %q in %s", want, us)
		}
	}
	if si := card(measure.SI); !strings.Contains(si, "fell by 10.0 C deg and more") || !strings.Contains(si, "reached 0.0 °C") && !strings.Contains(si, "reached 0 °C") {
		t.Error(si)
	}
	for _, swap := range [][2]string{{`"water": "lake"`, `"water": "river"`}, {`"water": "lake"`, `"water": "unknown"`}, {`"season": "winter"`, `"season": "spring"`}, {`"inlets": "no"`, `"inlets": "yes"`}} {
		if text := card(measure.US, swap[0], swap[1]); strings.Contains(text, "670 lb") || strings.Contains(text, " 8 in") || !strings.Contains(text, "No thickness, however thick the ice") {
			t.Errorf("%s: %s", swap[1], text)
		}
	}
	if text := card(measure.US, `"people": 3 }`, `"people": "unknown" }`); !strings.Contains(text, "ice.crossing.people: not known") || strings.Contains(text, " 8 in") {
		t.Error(text)
	}
	if text := cardText(t, "Ice card for the pocket (1 of 2)", "Ice card for the pocket (2 of 2)", measure.US, `"cracks": "none"`, `"cracks": "crossing"`); !strings.Contains(text, "crossing cracks counted, 2.00 times") || !strings.Contains(text, "1 ft 3-3/4 in") || !strings.Contains(text, "Back to shore at once") {
		t.Error(text)
	}
}

// TestHolesAskForAll: the page for the holes has a column for all that a hole is judged by.
func TestHolesAskForAll(t *testing.T) {
	text := cardText(t, "Holes of the day", "What public bodies", measure.US)
	if !strings.Contains(text, "hole hour along across clear white gap layer water snow near left") || !strings.Contains(text, "layers never add") {
		t.Error(text)
	}
}
