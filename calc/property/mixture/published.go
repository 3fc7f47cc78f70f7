package mixture

// published lists the pairs, one list a publication. A pair stands in one list only.
var published = []*Publication{
	&LemmonJacobsen2004,
	&KunzWagner2012,
	&Bell2023,
	&McLinden2025,
	&BellLemmon2016,
	&Bell2025,
	&Bell2022,
}
