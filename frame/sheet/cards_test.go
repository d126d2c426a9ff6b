package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
	"github.com/google/go-cmp/cmp"
)

var updatePages = flag.Bool("update-pages", false, "write the pages under testdata anew")

func day() time.Time { return time.Date(2027, time.February, 6, 12, 0, 0, 0, time.UTC) }

// pagesOf returns a demo's pages, its plan's texts swapped.
func pagesOf(t testing.TB, demo string, units measure.System, swaps ...string) sheet.Document {
	t.Helper()
	in, err := plan.Demo(demo)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	d, err := dock.Read(demo, strings.NewReader(strings.NewReplacer(swaps...).Replace(string(text))))
	if err != nil {
		t.Fatal(err)
	}
	pages, err := sheet.Of(d, reported(t, d, units), day())
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

var (
	drawings = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	styles   = regexp.MustCompile(`(?s)<style>.*?</style>`)
	lines    = regexp.MustCompile(`(?s)<span class="line"[^>]*></span>`)
	boxes    = regexp.MustCompile(`<span class="tick"[^>]*></span>`)
	breaks   = regexp.MustCompile(`</(td|th|p|li|h1|h2|h3|caption)>`)
	markup   = regexp.MustCompile(`<[^>]*>`)
	spaces   = regexp.MustCompile(`[ \n]*\n[ \n]*`)
)

// plain returns what a page says, without its pictures.
func plain(page string) string {
	page = styles.ReplaceAllString(page, "")
	page = drawings.ReplaceAllString(page, "(picture)\n")
	page = lines.ReplaceAllString(page, "____")
	page = boxes.ReplaceAllString(page, "[ ] ")
	page = breaks.ReplaceAllString(page, "\n")
	page = markup.ReplaceAllString(page, "")
	return spaces.ReplaceAllString(strings.NewReplacer("&#39;", "'", "&#34;", `"`, "&amp;", "&", "&lt;", "<", "&gt;", ">").Replace(page), "\n")
}

// TestPages pins what the pages of both demos say, and that each is one page of
// well-formed HTML whose every side says what it must.
func TestPages(t *testing.T) {
	for demo, units := range map[string]measure.System{"swim": measure.US, "work": measure.SI} {
		doc := pagesOf(t, demo, units)
		page, err := doc.HTML()
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("testdata", demo+"_pages.txt")
		text := plain(page)
		if *updatePages {
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(string(want), text); d != "" {
			t.Errorf("%s (-want +got; -update-pages writes it anew):\n%s", demo, d)
		}
		sound(t, demo, page, doc)
	}
}

// sound checks what holds for every page.
func sound(t *testing.T, name, page string, doc sheet.Document) {
	t.Helper()
	in := xml.NewDecoder(strings.NewReader(page))
	in.Strict, in.Entity = true, map[string]string{}
	for {
		if _, err := in.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	for _, bad := range []string{"NaN", "+Inf", "no number", "no finite number", "<script", "%!"} {
		if strings.Contains(page, bad) {
			t.Errorf("%s: the page holds %q", name, bad)
		}
	}
	if doc.Fingerprint == "" || len(doc.Fingerprint) != 12 {
		t.Errorf("%s: fingerprint %q", name, doc.Fingerprint)
	}
	sides := strings.Split(page, `<section class="sheet"`)[1:]
	for _, s := range sides {
		for _, must := range []string{sheet.NotSealed, "Plan " + doc.Fingerprint, "6 February 2027", "NDS 2018", "Not checked: "} {
			if !strings.Contains(s, must) {
				t.Errorf("%s: a side lacks %q: %.200s", name, must, s)
			}
		}
	}
	if n := strings.Count(page, "<svg"); n != strings.Count(page, "<desc") || n != strings.Count(page, `<svg xmlns="http://www.w3.org/2000/svg" role="img"`) {
		t.Errorf("%s: %d pictures, %d descriptions", name, n, strings.Count(page, "<desc"))
	}
	for _, title := range []string{
		"The twelve checks", "Order of work: in the garage", "Layout of the frame", "Cut list", "Purchase list", "Hardware schedule", "Carrying it down",
		"Ice card for the pocket", "Order of work: on the ice", "Order of work: break-up and launch", "The day it floats", "Capacity plate", "Season card", "For the engineer",
	} {
		if !strings.Contains(page, title) {
			t.Errorf("%s: no side is headed %q", name, title)
		}
	}
}

// TestPagesUnknown: a plan that knows next to nothing has its pages, with lines to
// write on and reasons in place of numbers.
func TestPagesUnknown(t *testing.T) {
	d, err := dock.Read("bare", strings.NewReader(`{"name": "Bare", "frame": {"length": "20 ft", "width": "8 ft", "joists": {"size": "2x8", "spacing": "16 in"}, "rims": {"size": "2x8"}, "decking": {"size": "2x6"}},
		"floats": [{"name": "drum", "shape": "unknown", "length": "unknown", "mass": "unknown", "girth": "unknown", "bays": [1, 3], "marks": ["4 ft"], "bears": "between joists", "lies": "across"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := sheet.Of(d, reported(t, d, measure.US), day())
	if err != nil {
		t.Fatal(err)
	}
	page, err := doc.HTML()
	if err != nil {
		t.Fatal(err)
	}
	sound(t, "bare", page, doc)
	if text := plain(page); !strings.Contains(text, "not known") || strings.Contains(text, "0.0 lb\n") {
		t.Errorf("a bare plan's pages: %s", text)
	}
}

// TestSeasonCard: with a table of past winters the season card has the days of each
// load and when the work falls, and another the odds as a picture.
func TestSeasonCard(t *testing.T) {
	in, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	all, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	d, err := dock.Read("swim", bytes.NewReader(all))
	if err != nil {
		t.Fatal(err)
	}
	var winters strings.Builder
	winters.WriteString("date,temp\n")
	for at := time.Date(2016, time.September, 1, 0, 0, 0, 0, time.UTC); at.Year() < 2027; at = at.AddDate(0, 0, 1) {
		fmt.Fprintf(&winters, "%s,%.1f\n", at.Format(time.DateOnly), 5-17*math.Cos(2*math.Pi*float64(at.YearDay()-20-at.Year()%5)/365.25))
	}
	if d, err = d.WithWinters("invented.csv", strings.NewReader(winters.String()), season.Options{}); err != nil {
		t.Fatal(err)
	}
	r := reported(t, d, measure.SI)
	doc, err := sheet.Of(d, r, day())
	if err != nil {
		t.Fatal(err)
	}
	page, err := doc.HTML()
	if err != nil {
		t.Fatal(err)
	}
	sound(t, "with winters", page, doc)
	text := plain(page)
	for _, want := range []string{
		"ice-out, by past temperatures\n" + r.Season.Table.Out.P10.Format("2 Jan 2006") + "\n" + r.Season.Table.Out.P50.Format("2 Jan 2006"),
		"ice-out, as remembered\n" + r.Season.Memory.Out.P10.Format("2 Jan 2006"), "What counts here of the table of temperatures and of remembered dates: the earlier",
		"ice-on, as remembered\n" + r.Season.Memory.On.P10.Format("2 Jan 2006"), "It has come: one day, by this winter's own temperatures", "no last day",
		"150 mm of ice: one person on foot",
		"\nThe work\n", "[1]", "\n" + r.Season.Calendar.Slots[0].Task.Name, "Ice through the winter",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the season card lacks %q", want)
		}
	}
	if strings.Contains(text, "[0]") {
		t.Error("notes are counted from nothing")
	}
	if strings.Contains(text, "not as it is") {
		t.Error("a task is barred on sound ice")
	}
	// A task that would begin today does not where the ice of today tells nothing.
	if d, err = dock.Read("swim", strings.NewReader(strings.Replace(string(all), `"changed": "no"`, `"changed": "yes"`, 1))); err == nil {
		d, err = d.WithWinters("invented.csv", strings.NewReader(winters.String()), season.Options{})
	}
	if err != nil {
		t.Fatal(err)
	}
	barred, err := sheet.Of(d, reported(t, d, measure.SI), day())
	if err != nil {
		t.Fatal(err)
	}
	if page, err = barred.HTML(); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"\nnot as it is\n", "Not as things are: \"Ice for one crossing\" has no answer on 6 Feb 2027. If the window closes early: "} {
		if !strings.Contains(plain(page), want) {
			t.Errorf("after a thaw the season card lacks %q", want)
		}
	}
	// The picture draws the odds of each load, and names those that are asked for.
	g, err := sheet.Draw(d, r)
	if err != nil {
		t.Fatal(err)
	}
	p, ok := g.Picture("winter")
	if !ok {
		t.Fatal("no picture of the winter")
	}
	drawn := strings.Join(strings.Fields(tags.ReplaceAllString(p.SVG, " ")), " ")
	if !strings.Contains(drawn, "winters of 100 that had it") {
		t.Errorf("no odds in %q", drawn)
	}
}

// TestPlateCard: the sign has the numbers of the plate and does not go up while
// something is short or has no answer.
func TestPlateCard(t *testing.T) {
	text := plain(page(t, pagesOf(t, "swim", measure.US)))
	in, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	d, err := dock.Read("swim", in)
	if err != nil {
		t.Fatal(err)
	}
	r := reported(t, d, measure.US)
	e, err := r.Envelope()
	if err != nil {
		t.Fatal(err)
	}
	p, err := d.Plate(e)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"\nNOBODY ABOARD\n", fmt.Sprintf("Floats and frame were checked for %d people of up to 185 lb each", p.People), "\nNO DIVING\n", "Not to be put up while this is short: ",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the sign lacks %q", want)
		}
	}
	if guess := "Nobody said, and a guess stands in: people["; strings.Contains(text, guess) ||
		!strings.Contains(plain(page(t, pagesOf(t, "swim", measure.US, `"mass": "150 lb"`, `"mass": "unknown"`))), guess) {
		t.Error("the sign does not tell a guess of people's mass from knowledge")
	}
	deep := plain(page(t, pagesOf(t, "swim", measure.US, `"depth": "9 ft"`, `"depth": "14 ft"`)))
	if strings.Contains(deep, "NO DIVING") {
		t.Error("no diving in 12 ft of water")
	}
	if text := plain(page(t, pagesOf(t, "work", measure.SI))); !strings.Contains(text, "Not to be put up while this has no answer: ") || strings.Contains(text, "while this is short") || !strings.Contains(text, "NO DIVING") {
		t.Error("the work float's sign")
	}
}

// page returns a document's page.
func page(t *testing.T, doc sheet.Document) string {
	t.Helper()
	out, err := doc.HTML()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestPagesRefuse: without dock, report or date there are none.
func TestPagesRefuse(t *testing.T) {
	if _, err := sheet.Of(nil, nil, day()); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no dock: %v", err)
	}
	if _, err := sheet.Of(&dock.Dock{}, &dock.Report{}, day()); err != nil {
		t.Errorf("an empty dock: %v", err)
	}
	doc := pagesOf(t, "swim", measure.US)
	doc.Date = time.Time{}
	if _, err := doc.HTML(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no date: %v", err)
	}
}
