"""Invented records in the layouts of offices; `expected` says which marks they hold.

The shapes follow the offices' own documentation and published files; every name, number and word in them is made up.
"""

# ruff: noqa: E501 - records stand on the lines an office might write

from __future__ import annotations

USPTO_BULK = """<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE trademark-applications-daily [
<!ELEMENT trademark-applications-daily (version, application-information)>
<!ELEMENT case-file (serial-number)>
]>
<trademark-applications-daily><version><version-no>2.0</version-no></version><application-information><file-segments>
<file-segment>TRMK</file-segment><action-keys><action-key>IB</action-key>
<case-file><serial-number>71000011</serial-number><registration-number>0100011</registration-number>
 <case-file-header><filing-date>19190611</filing-date><registration-date>19200210</registration-date>
  <status-code>800</status-code><mark-identification>LOAMWRIGHT</mark-identification>
  <mark-drawing-code>1000</mark-drawing-code></case-file-header>
 <case-file-statements>
  <case-file-statement><type-code>GS0231</type-code>
   <text>PLANTERS [, URNS ] ((AND FLOWER POTS)); *TRAYS*</text></case-file-statement>
  <case-file-statement><type-code>PM0001</type-code><text>LOAM WRIGHT</text></case-file-statement>
 </case-file-statements>
 <case-file-event-statements><case-file-event-statement><code>REN4</code><type>Q</type>
  <description-text>REGISTERED AND RENEWED</description-text></case-file-event-statement></case-file-event-statements>
 <classifications>
  <classification><international-code>021</international-code><us-code>030</us-code><status-code>6</status-code>
   <primary-code>030</primary-code></classification>
  <classification><international-code>011</international-code><status-code>2</status-code></classification>
  <classification><international-code>200</international-code><status-code>6</status-code></classification>
 </classifications>
 <case-file-owners>
  <case-file-owner><entry-number>01</entry-number><party-type>41</party-type><party-name>Kiln &amp; Co</party-name>
  </case-file-owner>
  <case-file-owner><entry-number>02</entry-number><party-type>41</party-type><party-name>Clay LLC</party-name>
  </case-file-owner>
  <case-file-owner><entry-number>01</entry-number><party-type>30</party-type><party-name>OLD POTTERY</party-name>
  </case-file-owner>
 </case-file-owners></case-file>
<case-file><serial-number>90000012</serial-number><registration-number>0000000</registration-number>
 <case-file-header><filing-date>20200401</filing-date><registration-date>00000000</registration-date>
  <status-code>602</status-code><mark-identification>MOSSLING</mark-identification>
  <mark-drawing-code>4000</mark-drawing-code></case-file-header>
 <case-file-statements><case-file-statement><type-code>MK0001</type-code><text>AND THE LONG WAY HOME</text>
 </case-file-statement></case-file-statements>
 <classifications><classification><international-code>031</international-code><status-code>6</status-code>
 </classification></classifications></case-file>
<case-file><serial-number>90000013</serial-number><registration-number/>
 <case-file-header><filing-date>20200402</filing-date><status-code>630</status-code>
  <mark-drawing-code>2000</mark-drawing-code></case-file-header></case-file>
<case-file><serial-number>89000014</serial-number><case-file-header><status-code>969</status-code>
 <mark-identification>NO MARK</mark-identification></case-file-header></case-file>
</action-keys></file-segments></application-information></trademark-applications-daily>
"""

USPTO_ST66 = """<?xml version="1.0"?><Transaction xmlns:ns2="urn:us:gov:doc:uspto:trademark:status"
 xmlns="http://www.wipo.int/standards/XMLSchema/trademarks"><TradeMarkTransactionBody><TransactionContentDetails>
<TransactionData><TradeMarkDetails><TradeMark><RegistrationOfficeCode>US</RegistrationOfficeCode>
<ApplicationNumber>76000021</ApplicationNumber><ApplicationDate>2000-05-09-04:00</ApplicationDate>
<RegistrationNumber>2800021</RegistrationNumber><RegistrationDate>2004-03-23-05:00</RegistrationDate>
<MarkCurrentStatusCode>702</MarkCurrentStatusCode><MarkFeature>TYPESET WORD(S) /LETTER(S) /NUMBER(S)</MarkFeature>
<WordMarkSpecification><MarkVerbalElementText>TERRAVEIL</MarkVerbalElementText><MarkTranslation/></WordMarkSpecification>
<GoodsServicesDetails><GoodsServices><ClassDescriptionDetails><ClassDescription><ClassNumber>021</ClassNumber>
<ClassNumberStatusCode>6</ClassNumberStatusCode><GoodsServicesDescription>Vases</GoodsServicesDescription>
<ClassDescriptionExt><ns2:PrimeClassText>030</ns2:PrimeClassText></ClassDescriptionExt></ClassDescription>
<ClassDescription><ClassNumber>031</ClassNumber><ClassNumberStatusCode>8</ClassNumberStatusCode>
<GoodsServicesDescription>Seeds</GoodsServicesDescription></ClassDescription></ClassDescriptionDetails></GoodsServices>
</GoodsServicesDetails><RepresentativeDetails><Representative><FreeFormatNameLine>An Attorney</FreeFormatNameLine>
</Representative></RepresentativeDetails></TradeMark></TradeMarkDetails>
<ApplicantDetails><Applicant><FreeFormatNameLine>New Owner Inc</FreeFormatNameLine>
<ApplicantExt><ns2:PartyTypeCode>30</ns2:PartyTypeCode></ApplicantExt></Applicant>
<Applicant><FreeFormatNameLine>First Owner Inc</FreeFormatNameLine>
<ApplicantExt><ns2:PartyTypeCode>10</ns2:PartyTypeCode></ApplicantExt></Applicant></ApplicantDetails>
</TransactionData></TransactionContentDetails></TradeMarkTransactionBody></Transaction>
"""

USPTO_ST96 = """<?xml version="1.0"?><ns2:TrademarkTransaction xmlns:ns1="http://www.wipo.int/standards/XMLSchema/ST96/Common"
 xmlns:ns2="http://www.wipo.int/standards/XMLSchema/ST96/Trademark"><ns2:TrademarkTransactionBody>
<ns2:TransactionContentBag><ns2:TransactionData><ns2:TrademarkBag><ns2:Trademark>
<ns1:RegistrationOfficeCode>US</ns1:RegistrationOfficeCode><ns1:ApplicationNumber><ns1:IPOfficeCode>US</ns1:IPOfficeCode>
<ns1:ApplicationNumberText>76000031</ns1:ApplicationNumberText></ns1:ApplicationNumber>
<ns1:RegistrationNumber>2800031</ns1:RegistrationNumber><ns2:ApplicationDate>2000-05-09-04:00</ns2:ApplicationDate>
<ns2:MarkCurrentStatusCode>710</ns2:MarkCurrentStatusCode><ns2:MarkRepresentation><ns2:MarkReproduction>
<ns2:WordMarkSpecification><ns2:MarkVerbalElementText>FERNALLOW</ns2:MarkVerbalElementText>
<ns2:MarkSignificantVerbalElementText>FERNALLOW</ns2:MarkSignificantVerbalElementText></ns2:WordMarkSpecification>
</ns2:MarkReproduction><ns2:MarkDescriptionBag><ns2:NationalMarkDescription><ns2:MarkFeatureCode>3</ns2:MarkFeatureCode>
</ns2:NationalMarkDescription></ns2:MarkDescriptionBag></ns2:MarkRepresentation><ns2:GoodsServicesBag><ns2:GoodsServices>
<ns2:GoodsServicesClassificationBag>
<ns2:GoodsServicesClassification><ns2:ClassificationKindCode>Primary</ns2:ClassificationKindCode>
<ns2:ClassNumber>030</ns2:ClassNumber></ns2:GoodsServicesClassification>
<ns2:GoodsServicesClassification><ns2:ClassificationKindCode>Nice</ns2:ClassificationKindCode>
<ns2:ClassNumber>021</ns2:ClassNumber></ns2:GoodsServicesClassification></ns2:GoodsServicesClassificationBag>
<ns2:ClassDescriptionBag><ns2:ClassDescription><ns2:ClassNumber>030</ns2:ClassNumber>
<ns2:GoodsServicesDescriptionText>Pots</ns2:GoodsServicesDescriptionText></ns2:ClassDescription></ns2:ClassDescriptionBag>
</ns2:GoodsServices></ns2:GoodsServicesBag><ns2:ApplicantBag><ns2:Applicant ns1:sequenceNumber="30">
<ns1:LegalEntityName>CORPORATION</ns1:LegalEntityName><ns1:Contact><ns1:Name><ns1:OrganizationName>
<ns1:OrganizationStandardName>Fern Works</ns1:OrganizationStandardName></ns1:OrganizationName>
<ns1:EntityName>Fern Works</ns1:EntityName></ns1:Name></ns1:Contact></ns2:Applicant>
<ns2:Applicant ns1:sequenceNumber="10"><ns1:Contact><ns1:Name><ns1:EntityName>Older</ns1:EntityName></ns1:Name>
</ns1:Contact></ns2:Applicant></ns2:ApplicantBag></ns2:Trademark></ns2:TrademarkBag></ns2:TransactionData>
</ns2:TransactionContentBag></ns2:TrademarkTransactionBody></ns2:TrademarkTransaction>
"""

CASE_FILES = {
    "case_file.csv": "serial_no,filing_dt,mark_draw_cd,mark_id_char,registration_dt,cfh_status_cd,registration_no\n"
    "71000041,1919-06-11,1000,HERBWICK,1920-02-10,800,0100041\n90000042,2020-04-01,2000,,,630,\n",
    "classification.csv": "serial_no,class_id,class_primary_cd,class_status_cd\n71000041,1,030,6\n71000041,2,031,2\n",
    "intl_class.csv": "serial_no,class_id,intl_class_cd\n71000041,1,021\n71000041,2,031\n",
    "us_class.csv": "serial_no,class_id,us_class_cd\n71000041,1,030\n",
    "owner.csv": "serial_no,own_id,own_seq,own_type_cd,own_name\n71000041,1,1,30,OLD POTTERY\n71000041,2,1,40,Kiln Ltd\n",
    "statement.csv": 'serial_no,statement_type_cd,statement_text\n71000041,PM0001,HERB WICK\n71000041,GS0231,"Pots, vases"\n',
}

GOODS = "".join(
    f'<GoodsServicesDescription languageCode="{code}">{words}</GoodsServicesDescription>'
    for code, words in (("bg", "Вази"), ("de", "Vasen"), ("en", "Vases"), ("fr", "Vases en verre"))
)


def eu(number: str, more: str, *, operation: str = "Insert", goods: str = GOODS) -> str:
    """A record of the European Union's open data."""
    return f"""<?xml version="1.0" encoding="UTF-8"?><Transaction xmlns="http://office.example/trademark/data">
<TradeMarkTransactionBody><TransactionContentDetails><TransactionData><TradeMarkDetails>
<TradeMark operationCode="{operation}"><RegistrationOfficeCode>EM</RegistrationOfficeCode>
<ApplicationNumber>{number}</ApplicationNumber><ApplicationDate>2020-04-08</ApplicationDate>{more}
<GoodsServicesDetails><GoodsServices><ClassDescriptionDetails><ClassDescription><ClassNumber>21</ClassNumber>{goods}
</ClassDescription></ClassDescriptionDetails></GoodsServices></GoodsServicesDetails>
<PriorityDetails><Priority><PriorityNumber>99</PriorityNumber><PriorityDate>2019-11-01</PriorityDate></Priority>
</PriorityDetails><OppositionDetails><Opposition><EarlierMarkDetails><EarlierMark><ApplicationNumber>7</ApplicationNumber>
<WordMarkSpecification><MarkVerbalElementText>ANOTHER</MarkVerbalElementText></WordMarkSpecification></EarlierMark>
</EarlierMarkDetails></Opposition></OppositionDetails>
<ApplicantDetails><ApplicantKey><Identifier>4711</Identifier></ApplicantKey></ApplicantDetails>
<RepresentativeDetails><RepresentativeKey><Identifier>1</Identifier></RepresentativeKey></RepresentativeDetails>
</TradeMark></TradeMarkDetails></TransactionData></TransactionContentDetails></TradeMarkTransactionBody></Transaction>"""


def words(text: str, *, status: str = "Registered", feature: str = "Word") -> str:
    """The parts of such a record that say what the mark is."""
    return (
        f'<ApplicationLanguageCode>de</ApplicationLanguageCode><MarkCurrentStatusCode status="1">{status}'
        f"</MarkCurrentStatusCode><MarkFeature>{feature}</MarkFeature><WordMarkSpecification>"
        f"<MarkVerbalElementText>{text}</MarkVerbalElementText></WordMarkSpecification>"
    )


EU_OWNERS = """<?xml version="1.0"?><Transaction xmlns="http://office.example/applicant/data"><TransactionData>
<ApplicantDetails><Applicant operationCode="Insert"><ApplicantIdentifier>4711</ApplicantIdentifier><ApplicantAddressBook>
<FormattedNameAddress><Name><FormattedName><LastName>Töpferei GmbH</LastName><OrganizationName>Töpferei GmbH</OrganizationName>
</FormattedName></Name></FormattedNameAddress></ApplicantAddressBook></Applicant></ApplicantDetails></TransactionData>
</Transaction>"""

_FLAGS = "|".join(f"Class{number}" for number in range(1, 46))


def flags(*classes: int) -> str:
    """A row's 45 flags."""
    return "|".join(str(int(number in classes)) for number in range(1, 46))


UK = (
    f"Trade Mark|Hyperlink|Mark Text|Name|Country|Status|Mark Type|Published|Filed|Registered|Expired|{_FLAGS}\r\n"
    f"UK00003000051|http://a|SPRIG | WICK|Invented Planters Ltd|France|Opposed|Word||13/04/2017|||{flags(21, 31)}\r\n"
    f'UK00002000052|http://b|"THE" POT|Pots Ltd|United Kingdom|Dead|Word||03/04/1995|05/01/1996|03/04/2005|{flags(21)}\r\n'
    f"UK00002000053|http://c||Pots Ltd|United Kingdom|Registered|Figurative||03/04/1995|05/01/1996||{flags(9)}\r\n"
)

CANADA = """<?xml version="1.0"?><tmk:TrademarkApplication xmlns:com="c" xmlns:tmk="t"><tmk:TrademarkBag>
<tmk:Trademark com:operationCategory="Update"><com:RegistrationOfficeCode>CA</com:RegistrationOfficeCode>
<com:ApplicationNumber><com:IPOfficeCode>CA</com:IPOfficeCode>
<com:ST13ApplicationNumber>300000200006100</com:ST13ApplicationNumber></com:ApplicationNumber>
<com:ApplicationDate>2020-01-15</com:ApplicationDate><tmk:MarkCurrentStatusCode>Application accepted</tmk:MarkCurrentStatusCode>
<tmk:MarkRepresentation><tmk:MarkFeatureCategory>Word</tmk:MarkFeatureCategory><tmk:MarkReproduction>
<tmk:WordMarkSpecification><tmk:MarkSignificantVerbalElementText>LOAMWRIGHT</tmk:MarkSignificantVerbalElementText>
</tmk:WordMarkSpecification></tmk:MarkReproduction></tmk:MarkRepresentation><tmk:GoodsServicesBag><tmk:GoodsServices>
<tmk:ClassDescriptionBag><tmk:ClassDescription><tmk:ClassNumber>21</tmk:ClassNumber>
<tmk:GoodsServicesDescriptionText com:languageCode="fr">Pots</tmk:GoodsServicesDescriptionText>
<tmk:GoodsServicesDescriptionText com:languageCode="en">Planters</tmk:GoodsServicesDescriptionText></tmk:ClassDescription>
</tmk:ClassDescriptionBag></tmk:GoodsServices></tmk:GoodsServicesBag><tmk:ApplicantBag><tmk:Applicant>
<com:LegalEntityName>Loamwright Inc.</com:LegalEntityName></tmk:Applicant></tmk:ApplicantBag></tmk:Trademark>
</tmk:TrademarkBag></tmk:TrademarkApplication>"""

SWITZERLAND = """<ApiResponse xmlns="urn:example"><Result success="true"><Data role="trademark"><Trademark>
<RegistrationNumber>800071</RegistrationNumber><RegistrationDate>2019-03-14</RegistrationDate>
<RegistrationOfficeCode>CH</RegistrationOfficeCode><MarkRepresentation><MarkReproduction><WordMarkSpecification>
<MarkSignificantVerbalElementText>MOOSLING</MarkSignificantVerbalElementText></WordMarkSpecification></MarkReproduction>
</MarkRepresentation></Trademark></Data></Result></ApiResponse>"""

NORWAY = (
    '{"trademarkApplication": {"trademarkBag": {"trademark": [{"registrationOfficeCode": "NO", "trademarkTypeChoice1":'
    ' {"applicationNumber": [{"applicationNumberText": "202000081"}], "registrationNumber": "310081"},'
    ' "markCurrentStatusCode": "Registered", "markRepresentation": {"markFeatureCategory": "Word", "markReproduction":'
    ' {"wordMarkSpecification": {"markSignificantVerbalElementText": [{"value": "FJELLING"}]}}}, "goodsServicesBag":'
    ' {"goodsServices": [{"classDescriptionBag": {"classDescription": [{"classNumber": "21"}]}}]}}]}}}\n'
)

FRANCE = """<trademarkSearch><results><result><fields>
<field name="ApplicationNumber"><value>4700091</value></field><field name="Mark"><value>POTELINE</value></field>
<field name="MarkCurrentStatusCode"><value>Marque expirée</value></field><field name="ClassNumber"><value>21</value></field>
<field name="DEPOSANT"><value>Poterie SARL</value></field><field name="ukey"><value>FMARK|4700091</value></field>
</fields></result></results></trademarkSearch>"""

BRAZIL = {
    "RM0001.xml": """<?xml version="1.0" encoding="UTF-8"?><revista numero="1" data="10/12/2013">
<processo numero="900000101" data-deposito="03/04/2012"><despachos><despacho codigo="IPAS009"
 nome="Publicação de pedido de registro para oposição"/></despachos><titulares>
 <titular nome-razao-social="OLARIA LTDA" pais="BR"/></titulares><marca apresentacao="Mista"><nome>VASO VIVO</nome></marca>
 <classe-nice codigo="21"><especificacao>Vasos;</especificacao></classe-nice>
 <prioridade-unionista><prioridade data="05/02/2012" numero="9" pais="IT"/></prioridade-unionista></processo>
<processo numero="900000102"><marca apresentacao="Figurativa"/></processo></revista>""",
    "RM0002.xml": """<?xml version="1.0" encoding="UTF-8"?><revista numero="2" data="17/12/2013">
<processo numero="900000101" data-concessao="10/05/2013" data-vigencia="10/05/2033"><despachos>
 <despacho codigo="IPAS158" nome="Concessão de registro"/><despacho codigo="IPAS270" nome="Deferimento de petição">
 <protocolo><requerente nome-razao-social="SOMEBODY"/></protocolo></despacho></despachos></processo>
<processo numero="900000199"><despachos><despacho codigo="IPAS024" nome="Indeferimento do pedido"/></despachos></processo>
</revista>""",
}

KOREA = """<response><body><items><TradeMarkInfo><ApplicationNumber>4020190000111</ApplicationNumber>
<RegistrationNumber>4015000110000</RegistrationNumber><ApplicationDate>20190101</ApplicationDate>
<RegistrationDate>20191223</RegistrationDate><PriorityClaimDate/><ApplicationStatus>등록</ApplicationStatus>
<GoodClassificationCode>21|31</GoodClassificationCode><ApplicantName>김</ApplicantName>
<RegistrationRightholderName>Pot Works</RegistrationRightholderName><Title>POTLUME</Title></TradeMarkInfo></items></body>
</response>"""

JAPAN = {
    "upd_jiken_c_t.tsv": "masterkosin_nitiji\tyonpo_code\tshutugan_no\tshutugan_bi\ttoroku_no\n"
    "20250611\t4\t2020000121\t20200106\t6300121\n20250611\t1\t2020000122\t20200106\t\n",
    "upd_standard_char_t_art.tsv": "add_del_id\tapp_num\tsplit_num\tsub_data_num\tstandard_char_t\n0\t2020000121\t\t\tローム\n",
    "upd_jiken_c_t_shohin_joho.tsv": "masterkosin_nitiji\tshutugan_no\trui\n1\t2020000121\t21\n",
}

AUSTRALIA = {
    "words.csv": "tm_number,words,class\n1000131,LOAMWRIGHT,21\n1000131,LOAMWRIGHT,31\n1000132,MOSSLING,9\n",
    "summary.csv": "tm_number,filing_year,status_code_desc\n1000131,2004,Registered : Registered/protected\n"
    "1000132,2004,Removed - Not Renewed : Renewal fee not paid\n",
    "applicants.csv": "tm_number,ipa_id,name,cleanname\n1000131,1,Loam Pty Ltd,LOAM\n",
}

MADRID = eu("1500141", words("ALPENVASE") + "<DesignatedCountryCode>BX</DesignatedCountryCode>"
            "<DesignatedCountryCode>EM</DesignatedCountryCode><DesignatedCountryCode>CH</DesignatedCountryCode>",
            ).replace(">EM</RegistrationOffice", ">WO</RegistrationOffice")  # fmt: skip

CZECHIA = """<Transaction xmlns:t="t" xmlns:c="c"><t:TrademarkBag><t:Trademark><c:RegistrationOfficeCode>CZ</c:RegistrationOfficeCode>
<c:ApplicationNumber><c:ApplicationNumberText>500151</c:ApplicationNumberText></c:ApplicationNumber>
<t:MarkCurrentStatusCode>27</t:MarkCurrentStatusCode>
<t:MarkCurrentStatusInternalDescriptionText>Registration expired</t:MarkCurrentStatusInternalDescriptionText>
<t:MarkRepresentation><t:MarkFeatureCategory>Combined</t:MarkFeatureCategory><t:MarkReproduction><t:WordMarkSpecification>
<t:MarkSignificantVerbalElementText c:languageCode="cs">HLINA</t:MarkSignificantVerbalElementText>
</t:WordMarkSpecification></t:MarkReproduction></t:MarkRepresentation><t:ApplicantBag><t:Applicant><c:Contact><c:Name>
<c:OrganizationName><c:OrganizationStandardName>Hlina s.r.o.</c:OrganizationStandardName></c:OrganizationName></c:Name>
</c:Contact></t:Applicant></t:ApplicantBag></t:Trademark></t:TrademarkBag></Transaction>"""

SWEDEN = """<Transaction><TransactionData><TradeMarkDetails>
<TradeMark><RegistrationOfficeCode>SE</RegistrationOfficeCode><ApplicationNumber>2019/161</ApplicationNumber>
<KindMark>Individual</KindMark><MarkCurrentStatusCode>Registered</MarkCurrentStatusCode><WordMarkSpecification>
<MarkVerbalElementText>LERKRUKA</MarkVerbalElementText><MarkVerbalElementText>NORR</MarkVerbalElementText>
<MarkVerbalElementText>LERKRUKA</MarkVerbalElementText></WordMarkSpecification><GoodsServicesDetails><ClassDescription>
<ClassNumber>21</ClassNumber></ClassDescription></GoodsServicesDetails></TradeMark>
<TradeMark><RegistrationOfficeCode>SE</RegistrationOfficeCode><ApplicationNumber>2019/162</ApplicationNumber>
<MarkCurrentStatusCode>Ended</MarkCurrentStatusCode><WordMarkSpecification>
<MarkVerbalElementText>MOSSKRUKA</MarkVerbalElementText></WordMarkSpecification></TradeMark></TradeMarkDetails>
</TransactionData></Transaction>"""

EXCHANGE = """<Transaction xmlns="http://other.example/ro"><TransactionData><TradeMarkDetails><TradeMark operationCode="Insert">
<RegistrationOfficeCode>RO</RegistrationOfficeCode><ApplicationNumber>M 2012 00171</ApplicationNumber>
<RegistrationNumber>110171</RegistrationNumber><ApplicationLanguageCode>ro</ApplicationLanguageCode>
<MarkCurrentStatusCode>Registered</MarkCurrentStatusCode><MarkFeature>Combined</MarkFeature><WordMarkSpecification>
<MarkVerbalElementText languageCode="ro">OALA</MarkVerbalElementText></WordMarkSpecification><GoodsServicesDetails>
<ClassDescription><ClassNumber>21</ClassNumber><GoodsServicesDescription languageCode="ro">Oale</GoodsServicesDescription>
</ClassDescription></GoodsServicesDetails><ApplicantDetails><Applicant><ApplicantAddressBook><FormattedNameAddress><Name>
<FormattedName><LastName>OALA SRL</LastName><OrganizationName>OALA SRL</OrganizationName></FormattedName></Name>
</FormattedNameAddress></ApplicantAddressBook></Applicant></ApplicantDetails></TradeMark></TradeMarkDetails>
</TransactionData></Transaction>"""
