package stone

// Court is what a report for a court adds (Fed. R. Civ. P. 26(a)(2)(B)): the
// opinions with their grounds and the facts stand in the document itself.
type Court struct {
	Exhibits     List[string] `yaml:"exhibits" doc:"what will be shown, or none"`
	Publications List[string] `yaml:"publications" doc:"what the examiner published in the last ten years, or none"`
	Testimony    List[string] `yaml:"testimony" doc:"cases of the last four years with the examiner's testimony, or none"`
	Pay          string       `yaml:"pay" doc:"what is paid for study and testimony"`
}

// Gift is what a report on a donated item adds.
type Gift struct {
	Date Date   `yaml:"date" need:"yes" eg:"2026-12-01" doc:"day of the gift"`
	To   string `yaml:"to" doc:"to whom"`
}

// Spoken is an opinion given by word of mouth before or beside the document.
type Spoken struct {
	Date Date   `yaml:"date" need:"yes" eg:"2026-10-14" doc:"when"`
	To   string `yaml:"to" need:"yes" eg:"the client" doc:"to whom"`
	What string `yaml:"what" need:"yes" doc:"what was said"`
}
