package ice

import (
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Caution is a public body's advice, in this library's words.
type Caution struct {
	Text      string
	Publisher string
	Status    measure.Status
}

// Cautions returns what public bodies advise for work on ice. Where two
// differ, both are listed.
func Cautions() []Caution { return append([]Caution(nil), cautions...) }

// caution returns the caution that begins so, with its publisher.
func caution(begin string) string {
	for _, c := range cautions {
		if strings.HasPrefix(c.Text, begin) {
			return c.Text + " (" + c.Publisher + ")"
		}
	}
	return begin
}

var cautions = []Caution{
	{"drill at least every 30 m (100 ft) along the way", "tip list attributed to the Minnesota Department of Natural Resources (lakelifewknd.com); its own page says 46 m (150 ft)", measure.Quoted},
	{"the smallest thickness measured is the one that counts", "Maine Warden Service", measure.Read},
	{"measure clear ice; slush and snow count nothing", "Minnesota Department of Natural Resources, as reprinted", measure.Quoted},
	{"wear a life jacket or float coat, but not inside a closed vehicle", "Minnesota and Wisconsin Departments of Natural Resources; CCOHS (Canada)", measure.Read},
	{"carry ice picks, rope, chisel, tape, and a phone or beacon", "Minnesota Department of Natural Resources", measure.Read},
	{"ice picks round the neck and a throw line are the least; probe with an ice staff", "Norwegian Water Resources and Energy Directorate (NVE)", measure.Read},
	{"never alone; leave your plan and the hour of your return with somebody", "Minnesota Department of Natural Resources; City of Edmonton; Michigan; CCOHS (Canada)", measure.Read},
	{"keep 10 yd (9 m) from your companion while you move", "Aspen Times, quoting a Colorado agency", measure.Quoted},
	{"probe ahead with a heavy chisel; consider a rope to a partner", "US Army Corps of Engineers, as reprinted", measure.Quoted},
	{"park vehicles 50 ft (15 m) apart and move them every two hours; drill a hole beside each and move when water runs over", "Minnesota Department of Natural Resources", measure.Read},
	{"keep vehicles 50 m apart", "Finnish Meteorological Institute", measure.Read},
	{"loads over 7000 kg at least 1 km apart in one direction, at most 15 km/h; park and store nothing on the ice", "Saskatchewan Highways", measure.Read},
	{"7 t and more: at most 15 km/h", "Manitoba Transportation and Infrastructure", measure.Read},
	{"meet the shore at 45 degrees or more, and take extra care over shallow water", "Treasury Board of Canada, guide for operations over ice, 3.4.2", measure.Read},
	{"a sudden drop of temperature makes ice brittle for 24 hours: stay off", "CCOHS (Canada), January 2005", measure.Read},
	{"above freezing for 6 of the last 24 hours: double the thickness; for 24 hours and more: stay off", "Minnesota Department of Natural Resources (albertleatribune.com, 2013)", measure.Read},
	{"air of 0 °C (32 °F) and higher for a few days: no load at all", "US Army TM 5-852-1, note to Table 2-1", measure.Read},
	{"after a thaw double or triple the thickness until several days of frost have passed", "Lake Champlain Committee", measure.Read},
	{"spring ice: 30 cm (12 in) of candled ice may not hold a person", "Norwegian Water Resources and Energy Directorate (NVE); Finnish Tukes", measure.Read},
	{"where the water level fell, take 20 % off the load; ice that does not rest on water cannot be relied on", "Russian text on ice crossings (strojdizain.ru)", measure.Read},
	{"ice is weaker along banks of ploughed snow", "Saskatchewan Highways", measure.Read},
	{"keep off pressure ridges, slush, inlets, outlets, narrows, and the ice round logs and structures", "Wisconsin Department of Natural Resources; City of Edmonton; Saskatchewan Water Security Agency; NVE", measure.Read},
	{"layers with water or air between them: the strongest one counts alone", "NVE; Finnish Meteorological Institute", measure.Read},
	{"the load charts for ice roads do not serve for loads that stand", "Northwest Territories Department of Transportation, 2015", measure.Read},
	{"the table for moving loads cannot be relied on for loads that stand", "US Army Corps of Engineers, as reprinted", measure.Quoted},
	{"with a load at or below half of what the ice bears, speed matters little; above that, on ice under 75 cm (30 in), a limit applies (the figure was not seen)", "Treasury Board of Canada, guide for operations over ice, 3.4.3", measure.Read},
	{"dark things (drums, lumber, tools) take up the sun and melt in, then freeze in: lay boards or snow under them; 100 W/m² taken up melt at most 28 mm a day (heat of melting: Ashton)", "no one publisher", measure.CommonPractice},
	{"ask local authorities and people who know this ice; permits and licensed practice come first; one who falls in lives minutes, not hours", "no one publisher", measure.CommonPractice},
}
