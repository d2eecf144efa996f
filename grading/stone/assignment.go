package stone

// Assignment is what stone files and piece files say of the work: which
// document, when, by whom, for whom and where.
type Assignment struct {
	Report     string     `yaml:"report" need:"yes" words:"appraisal|note|record" doc:"kind of document"`
	Received   Date       `yaml:"received" doc:"day the stone came in"`
	Examined   List[Date] `yaml:"examined" need:"yes" eg:"2026-10-14" doc:"day of the examination, or first and last day"`
	Examiner   string     `yaml:"examiner" need:"yes" eg:"okafor" doc:"an examiner of the bench file"`
	Authorised string     `yaml:"authorised_by" doc:"who authorised the document, an examiner of the bench file"`
	Place      string     `yaml:"place" doc:"where the examination was done, if not at the practice"`
	Client     *Client    `yaml:"client" doc:"for whom; own stock: write name: own stock"`
	ShortForm  string     `yaml:"short_form" words:"agreed" doc:"the client agreed to a short form; own stock counts"`
	Location   string     `yaml:"location" doc:"where the stone is kept"`
	Prepared   *Prepared  `yaml:"prepared" doc:"how the stone was cleaned before testing"`
}

// Account is what stone files and piece files say of value, ownership and use,
// and of the issuer's part in it.
type Account struct {
	Worth   *Worth   `yaml:"worth" doc:"appraisal: the value and how it was reached"`
	Stock   *Stock   `yaml:"stock" doc:"retailer: stock number and asking price"`
	Sold    *bool    `yaml:"sold_by_issuer" doc:"the issuer of the document sold the stone"`
	Owned   *Owned   `yaml:"owned" doc:"owner: since when, from whom, what was paid"`
	Insured *Insured `yaml:"insured" doc:"the policy it is insured under"`
	Valued  []Valued `yaml:"valued" doc:"earlier valuations by others"`

	History      *History `yaml:"history" doc:"what else moves the value: style, maker, age, alterations"`
	Use          Use      `yaml:"use" doc:"what the document is for and who may rely on it"`
	Scope        Scope    `yaml:"scope" doc:"what was inspected, researched and left out"`
	Interest     Interest `yaml:"interest" doc:"the issuer's interests in the stone"`
	Assumptions  []string `yaml:"assumptions" doc:"uncertain facts taken as true"`
	Hypothetical []string `yaml:"hypothetical" doc:"facts known to be false but assumed"`
	Photos       []Photo  `yaml:"photos" doc:"pictures, the first one leads"`
	Standards    []string `yaml:"standards" doc:"standards that the signer states to have followed, with the edition; nothing is claimed without"`
	Spoken       []Spoken `yaml:"spoken" doc:"opinions given to the client by word of mouth, or none"`
	Court        *Court   `yaml:"court" doc:"what a court asks for beside"`
	Oath         string   `yaml:"oath" doc:"before whom and when the appraisal was sworn"`
	Gift         *Gift    `yaml:"gift" doc:"the gift that a donation appraisal is for"`
	Explanation  string   `yaml:"explanation" doc:"needed to issue against a contradicted claim; printed"`
}
