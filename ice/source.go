package ice

import "example.org/floewright/lumber/measure"

// The texts that the rules of this package come from. A source that was not
// read in its own text says so in its status.
var (
	minnesotaWeight = &measure.Source{
		Title:   "Minnesota Department of Natural Resources, ice thickness guidelines by weight",
		Locator: "weight table and its footnote, solid clear ice", Status: measure.Read,
	}
	minnesotaWhite = &measure.Source{
		Title:   "Minnesota Department of Natural Resources, ice thickness guidelines",
		Locator: "white ice", Status: measure.Read,
	}
	minnesotaThaw = &measure.Source{
		Title:   "Minnesota Department of Natural Resources, advice after warm days",
		Edition: "as printed in the Albert Lea Tribune, 2013", Status: measure.Read,
	}
	manualGuide = &measure.Source{
		Title:   "US Army TM 5-852-1 / AFR 88-19 Vol 1",
		Edition: "reprinted in UFC 3-130-01", Locator: "2-4", Status: measure.Read,
	}
	manualThaw = &measure.Source{
		Title:   "US Army TM 5-852-1 / AFR 88-19 Vol 1",
		Edition: "reprinted in UFC 3-130-01", Locator: "Table 2-1, note on air of 32 °F and higher", Status: measure.Read,
	}
	alaskaNotice = &measure.Source{
		Title:   "University of Alaska Anchorage, notice on travel over ice",
		Edition: "October 2004", Locator: "h = 4 S √W", Status: measure.Read,
	}
	alaskaForum = &measure.Source{
		Title: "Alaska Science Forum, Ice Travel", Locator: "h = 5 √W", Status: measure.Read,
	}
	albertaOntario = &measure.Source{
		Title:   "Alberta SH010 and Ontario IHSA029, best practice for work on ice covers",
		Edition: "2013 and 2014", Locator: "bearing classes", Status: measure.Memory,
	}
	northwest = &measure.Source{
		Title:   "Northwest Territories Department of Transportation, ice construction guidelines",
		Edition: "February 2015", Locator: "load charts of Appendices A to C (that they exist was read; their use is from memory)", Status: measure.Memory,
	}
	russianRule = &measure.Source{
		Title: "Russian rule a = 11 √Q", Edition: "drahelas.ru, thread 102578", Status: measure.Quoted,
	}
	champlain = &measure.Source{
		Title: "Lake Champlain Committee, advice on ice after a thaw", Status: measure.Read,
	}
	ccohs = &measure.Source{
		Title:   "CCOHS (Canada), newsletter",
		Edition: "January 2005", Status: measure.Read,
	}
	norway = &measure.Source{
		Title:   "Norwegian Water Resources and Energy Directorate (NVE), varsom.no",
		Locator: "slush ice, layers, spring ice", Status: measure.Read,
	}
	finland = &measure.Source{
		Title:   "Finnish Meteorological Institute, vehicles on ice",
		Locator: "effective thickness, layers, cracks", Status: measure.Read,
	}
	maineChart = &measure.Source{
		Title: "Maine Warden Service and Forest Resources Association, ice chart", Status: measure.Read,
	}
	levelDrop = &measure.Source{
		Title: "Russian text on the practice of ice crossings, strojdizain.ru", Locator: "fallen water level", Status: measure.Read,
	}
)

// own returns a source for a choice of this library; why says what it rests on.
func own(why string) *measure.Source {
	return &measure.Source{Title: why, Status: measure.OwnChoice}
}
