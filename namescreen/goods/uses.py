"""Who uses goods, and when, where and for what: gardeners, of trowels; bedtime, of pyjamas. From general knowledge of
such goods, and incomplete; common practice, no source (TMEP 1209.03(i), of users, from memory)."""

from __future__ import annotations

from collections.abc import Mapping

from ..text import fold
from .word_lists import glossary, said_of_goods

__all__ = ["USED_BY", "used_abroad"]

_USES = """
gardener allotment grower planter gardening
: trowel, secateurs, pruner, spade, fork, hoe, rake, shears, dibber, garden, gardening, seed, plant, planter,
  flowerpot, watering can, compost, glove, kneeler, trug, hose, wheelbarrow, twine, boot, apron, hand tool
beekeeper bee_keeper apiarist apiary
: hive, smoker, bee, beekeeping, honey extractor, veil, frame, uncapping
baker home_baker home_baking baking weekend_baker bakery bake_day baking_day
: flour, baking, bakeware, cake tin, loaf, bread, proofing, banneton, whisk, rolling pin, oven, yeast, dough, pan,
  apron, mixing bowl, cookie, biscuit cutter, sprinkle
cook chef home_cook kitchen kitchen_helper kitchenhelper cooking cook_at_home
: kitchen, cookware, pan, pot, knife, apron, spatula, spoon, ladle, peeler, grater, chopping board, cutting board,
  utensil, salt, spice, oven glove, oil, mortar, tea towel, sauce
barista brewer coffee_lover coffee_break morning_coffee morning_brew coffee_time elevenses
: coffee, espresso, cup, mug, grinder, milk jug, tamper, coffee maker, cafetiere, kettle
tea_lover tea_time teatime afternoon_tea tea_break high_tea
: tea, teapot, teacup, cup, infuser, tea cosy, biscuit, cake, scone, strainer, kettle, shortbread
wine_lover sommelier bartender barman barmaid barkeeper mixologist happy_hour aperitif aperitivo after_dinner nightcap
: wine, glass, corkscrew, cocktail, bitters, shaker, spirit, liqueur, decanter, mint, chocolate, vermouth, tonic, bar
angler fisherman fisher fly_fisher anglers fishing river_bank
: fishing, rod, reel, lure, tackle, bait, wader, creel
hunter huntsman gamekeeper stalker shooter hunting
: hunting, binoculars, decoy, gun, rifle, cartridge, camouflage, calls
hiker walker rambler trekker backpacker hillwalker hill_walker hiking trekking rambling day_hike trail
: hiking, walking, backpack, rucksack, boot, sock, pole, walking stick, map, tent, flask, gaiter, jacket, water bottle
camper camping campsite campfire camp_fire campfire_cooking camp_cook wild_camping glamping bushcraft bushcrafter
: tent, camping, sleeping bag, stove, enamel, mug, lantern, hammock, pan, pot, kettle, cookware, campfire, axe, knife,
  tarpaulin, bushcraft, blanket, chair
cyclist bike_rider biker commuter commuting commute night_ride night_rider bike_to_work
: bicycle, bike, cycling, helmet, light, lamp, pannier, bell, saddle, cape, jersey, glove, pump, lock, rain
motorcyclist biker rider
: motorcycle, motorbike, helmet, jacket, glove, visor, motor
runner jogger running marathon marathoner jogging trail_runner sprint
: running, shoe, insole, sock, sportswear, hydration, armband, belt, gel, legging, watch
climber mountaineer boulderer alpinist climbing bouldering
: climbing, rope, harness, carabiner, chalk, crag, boot, crampon, ice axe
swimmer swimming poolside pool beach seaside by_the_sea beach_day lido
: swimming, swimsuit, goggles, towel, lounger, parasol, swim, sandal, beach, sun, bikini, cap, float, cover up,
  deckchair
surfer sailor skipper yachtsman boater rower paddler canoeist kayaker sailing boating
: surfboard, wetsuit, sail, sailing, boat, rope, oar, paddle, canoe, kayak, surf wax, life jacket, deck, oilskin, foul
  weather
skier snowboarder skating skater skiing apres_ski
: ski, snowboard, goggles, skate, ski wax, skateboard
golfer caddie caddy tee_time
: golf, tee, putter
rider horse_rider equestrian jockey groom horseman horsewoman
: horse, saddle, bridle, riding, stable, grooming, jodhpurs, hoof, halter
dog_walker dog_owner dog_lover dog_walk walkies after_walk puppy_parent dog_mum puppy
: dog, leash, lead, collar, treat, harness, pet, poop bag, towel, coat
cat_owner cat_lover kitten
: cat, litter, pet, scratching, feeder
birder birdwatcher twitcher bird_lover
: bird, binoculars, feeder, seed, nest, scope
knitter crocheter knitting crochet stitcher sewer seamstress tailor quilter dressmaker weaver spinner embroiderer
  needlewoman
: yarn, wool, needle, crochet hook, sewing, thread, scissors, fabric, pattern, loom, spindle, quilting, pin, thimble,
  embroidery, knitting, crochet
woodworker carpenter joiner woodturner whittler carver cabinet_maker cabinetmaker maker handyman diy diyer tinkerer
  mechanic plumber electrician builder bricklayer mason decorator roofer tiler plasterer blacksmith farrier welder
  locksmith
: tool, chisel, saw, hammer, screwdriver, plane, clamp, drill, workbench, nail, screw, trowel, wrench, spanner, pliers,
  tape measure, vice, file, knife, work trousers, spirit level, sandpaper, paintbrush
farmer smallholder shepherd dairymaid shearer vintner winegrower grape_picker harvester vineyard harvest picker forager
  mushroom_picker fruit_picker orchard
: farm, secateurs, shears, crook, milk, basket, bucket, grape, vineyard, fruit, press, picking, harvest, scythe, knife,
  boot, feed, overall, mushroom, berry, crate
barber hairdresser hair_stylist stylist manicurist beautician make_up_artist shave shaving wet_shave groom
: razor, shaving, scissors, comb, hair, brush, clipper, beard, nail, makeup, cosmetic, cape, towel, soap, balm
nurse doctor midwife vet carer
: watch, shoe, tunic, scrubs, stethoscope, thermometer, bandage, clog
teacher pupil student schoolchild school_run school school_day back_to_school classroom office desk home_office
: school, pencil, pen, rucksack, satchel, bag, lunch box, stationery, desk, chalk, water bottle, lamp, chair, uniform
artist painter illustrator calligrapher sculptor potter ceramicist printmaker engraver sketcher
: paint, paintbrush, easel, pencil, ink, pen, palette, clay, wheel, pottery, sketch, paper, pastel, kiln, print
musician guitarist drummer violinist pianist fiddler busker singer bassist
: guitar, string, drum, drumstick, strap, plectrum, violin, rosin, piano, microphone, capo
photographer filmmaker
: camera, lens, tripod
traveller traveler globetrotter travel trip journey voyage holiday vacation weekend weekend_away on_the_go on_the_road
  road_trip travel_light flight long_haul
: travel, luggage, suitcase, bag, toiletry, passport, wallet, backpack, rucksack, pillow, holdall, washbag, adapter,
  flask, toiletry bag, packing, mat
driver motorist car road
: car, driving, glove, dashboard, windscreen, vehicle
baby newborn toddler infant nursery babies first_steps first_step little_one little_ones bathtime bath_time bedtime
  playtime nap_time naptime mealtime tummy_time new_mum mother_to_be kids children child playroom
: baby, toddler, infant, child, children, pyjamas, swaddle, muslin, bib, blanket, shoe, bootee, toy, bath, nappy,
  diaper, cot, crib, bottle, romper, cutlery, plate, rattle, pram, book, nightlight, maternity, high chair
bride groom wedding wedding_day bridal bridesmaid bridal_couple bride_and_groom best_man usher
: wedding, ring, dress, veil, cake topper, candle, favour, garter, invitation, bouquet, tiara, cake, confetti, cufflink
birthday party anniversary christening baptism graduation easter christmas halloween valentine advent new_year
  celebration
: card, candle, balloon, cake, banner, paper, ribbon, decoration, gift, hamper, bunting, garland, wrapping, confetti,
  bauble, calendar, cracker, favour
bedroom bathroom bath shower laundry wash_day washday living_room hallway nightstand dining_room dining table tabletop
: bed, bath, towel, soap, laundry, washing, peg, mat, linen, sheet, lamp, rack, basket, table, tablecloth, napkin,
  tableware, curtain, hook, shelf, pillow, duvet, shampoo, detergent, sponge
breakfast brunch lunch dinner supper picnic picnic_time barbecue bbq grill snack snack_time dessert pudding_time
  sunday_lunch sunday_roast al_fresco lunch_break
: cereal, muesli, granola, jam, marmalade, tea, coffee, egg cup, hamper, basket, blanket, lunch box, plate, barbecue,
  grill, charcoal, tongs, sauce, snack, bar, cracker, mint, chocolate, gravy, juice, tableware, cutlery, bread,
  sausage, cheese, food
wake_up good_morning rise_and_shine sunrise morning early_bird
: coffee, tea, alarm, clock, cereal, breakfast, muesli, granola
good_night goodnight night_time nighttime sleep sleeping slumber snooze lullaby
: pyjamas, pillow, mattress, blanket, duvet, herbal tea, nightlight, mask, nightdress, bed, bedding, cot, sheet,
  earplug
winter summer rainy_day rain snow_day autumn spring frost sunny_day
: coat, jacket, glove, hat, scarf, boot, umbrella, sandal, sunhat, tyre, duvet, sock, raincoat, wellington, sledge,
  fleece
"""
"""Users, times, places and occasions (_ for spaces), and after the colon the goods for them: their own words, or what
dictionaries call them."""
_ABROAD = {
    "de": "imker=beekeeper gärtner=gardener hobbygärtner=gardener kleingärtner=gardener bäcker=baker "
    "hobbybäcker=baker koch=cook hobbykoch=cook angler=angler fischer=angler jäger=hunter wanderer=hiker "
    "camper=camper radler=cyclist radfahrer=cyclist läufer=runner kletterer=climber schwimmer=swimmer segler=sailor "
    "reiter=rider hundehalter=dog_owner hundefreund=dog_owner gassi=dog_walk gassigehen=dog_walk schreiner=carpenter "
    "tischler=carpenter zimmerer=carpenter heimwerker=handyman bastler=handyman handwerker=handyman maler=painter "
    "maurer=mason winzer=winegrower bauer=farmer schäfer=shepherd friseur=hairdresser barbier=barber musiker=musician "
    "reise=travel unterwegs=travel urlaub=holiday schule=school schulanfang=school büro=office baby=baby "
    "neugeborene=newborn kinder=children brautpaar=bride_and_groom braut=bride bräutigam=groom hochzeit=wedding "
    "hochzeitstag=wedding taufe=christening geburtstag=birthday weihnachten=christmas ostern=easter "
    "frühstück=breakfast brotzeit=snack picknick=picnic grillen=barbecue küche=kitchen bad=bath schlafzimmer=bedroom "
    "nachtruhe=sleep feierabend=supper weinlese=grape_picker ernte=harvest strickerin=knitter näherin=sewer "
    "töpfer=potter pilzsammler=mushroom_picker",
    "fr": "apiculteur=beekeeper jardinier=gardener jardinière=gardener boulanger=baker boulangère=baker "
    "pâtissier=baker cuisinier=cook cuisinière=cook pêcheur=angler chasseur=hunter randonneur=hiker randonneuse=hiker "
    "randonnée=hiking marcheur=hiker campeur=camper cycliste=cyclist coureur=runner grimpeur=climber nageur=swimmer "
    "marin=sailor cavalier=rider cavalière=rider menuisier=carpenter charpentier=carpenter bricoleur=handyman "
    "bricolage=diy artisan=maker peintre=painter maçon=mason vigneron=winegrower vendangeur=grape_picker "
    "vendange=harvest vendanges=harvest fermier=farmer berger=shepherd coiffeur=hairdresser barbier=barber "
    "musicien=musician voyage=travel voyageur=traveller vacances=holiday école=school rentrée=school écolier=pupil "
    "bureau=office bébé=baby enfants=children tout-petits=toddler petits=children mariée=bride mariage=wedding "
    "baptême=christening anniversaire=birthday noël=christmas petit-déjeuner=breakfast goûter=snack "
    "pique-nique=picnic apéro=aperitif apéritif=aperitif cuisine=kitchen bain=bath tricoteuse=knitter "
    "couturière=sewer potier=potter cueilleur=picker dodo=sleep",
    "es": "apicultor=beekeeper jardinero=gardener hortelano=gardener panadero=baker panadera=baker repostero=baker "
    "cocinero=cook cocinera=cook cocinar=cook pescador=angler cazador=hunter senderista=hiker excursionista=hiker "
    "montañero=climber ciclista=cyclist corredor=runner escalador=climber nadador=swimmer marinero=sailor "
    "jinete=rider carpintero=carpenter manitas=handyman bricolaje=diy albañil=mason pintor=painter "
    "viticultor=winegrower vendimiador=grape_picker vendimia=harvest agricultor=farmer pastor=shepherd "
    "peluquero=hairdresser barbero=barber músico=musician viaje=travel viajero=traveller vacaciones=holiday "
    "escuela=school colegio=school oficina=office bebé=baby niños=children novia=bride novios=bride_and_groom "
    "boda=wedding bautizo=christening cumpleaños=birthday navidad=christmas desayuno=breakfast merienda=snack "
    "picnic=picnic aperitivo=aperitif cocina=kitchen baño=bath tejedora=knitter costurera=sewer alfarero=potter "
    "setero=mushroom_picker",
    "it": "apicoltore=beekeeper giardiniere=gardener ortolano=gardener panettiere=baker fornaio=baker "
    "pasticciere=baker cuoco=cook cucinare=cook pescatore=angler cacciatore=hunter escursionista=hiker "
    "camminatore=hiker alpinista=climber ciclista=cyclist corridore=runner arrampicatore=climber nuotatore=swimmer "
    "marinaio=sailor cavaliere=rider falegname=carpenter fai-da-te=diy muratore=mason pittore=painter "
    "viticoltore=winegrower vendemmiatore=grape_picker vendemmia=harvest contadino=farmer pastore=shepherd "
    "parrucchiere=hairdresser barbiere=barber musicista=musician viaggio=travel viaggiatore=traveller vacanza=holiday "
    "scuola=school ufficio=office bimbo=baby bimbi=children neonato=newborn sposa=bride sposi=bride_and_groom "
    "nozze=wedding battesimo=christening compleanno=birthday natale=christmas colazione=breakfast merenda=snack "
    "picnic=picnic aperitivo=aperitif cucina=kitchen bagno=bath magliaia=knitter sarta=sewer vasaio=potter "
    "fungaiolo=mushroom_picker nanna=sleep",
    "nl": "imker=beekeeper tuinier=gardener tuinman=gardener hovenier=gardener bakker=baker thuisbakker=baker "
    "kok=cook hobbykok=cook visser=angler hengelaar=angler jager=hunter wandelaar=hiker kampeerder=camper "
    "fietser=cyclist hardloper=runner klimmer=climber zwemmer=swimmer zeiler=sailor ruiter=rider timmerman=carpenter "
    "klusser=handyman doe-het-zelver=handyman schilder=painter metselaar=mason wijnboer=winegrower boer=farmer "
    "herder=shepherd kapper=hairdresser barbier=barber muzikant=musician reis=travel reiziger=traveller "
    "vakantie=holiday school=school kantoor=office baby=baby kinderen=children bruid=bride bruidspaar=bride_and_groom "
    "bruiloft=wedding doop=christening verjaardag=birthday kerst=christmas ontbijt=breakfast picknick=picnic "
    "borrel=aperitif keuken=kitchen bad=bath breister=knitter naaister=sewer pottenbakker=potter",
    "pt": "apicultor=beekeeper jardineiro=gardener padeiro=baker cozinheiro=cook pescador=angler caçador=hunter "
    "caminhante=hiker campista=camper ciclista=cyclist corredor=runner escalador=climber nadador=swimmer "
    "marinheiro=sailor cavaleiro=rider carpinteiro=carpenter pedreiro=mason pintor=painter vinhateiro=winegrower "
    "vindima=harvest agricultor=farmer pastor=shepherd cabeleireiro=hairdresser barbeiro=barber músico=musician "
    "viagem=travel viajante=traveller férias=holiday escola=school escritório=office bebé=baby crianças=children "
    "noiva=bride noivos=bride_and_groom casamento=wedding batizado=christening aniversário=birthday natal=christmas "
    "lanche=snack piquenique=picnic cozinha=kitchen banho=bath costureira=sewer oleiro=potter",
    "pl": "pszczelarz=beekeeper ogrodnik=gardener działkowiec=gardener piekarz=baker kucharz=cook wędkarz=angler "
    "rybak=angler myśliwy=hunter turysta=hiker rowerzysta=cyclist biegacz=runner pływak=swimmer żeglarz=sailor "
    "jeździec=rider cieśla=carpenter stolarz=carpenter majsterkowicz=handyman murarz=mason malarz=painter "
    "winiarz=winegrower rolnik=farmer pasterz=shepherd fryzjer=hairdresser muzyk=musician podróż=travel "
    "podróżnik=traveller wakacje=holiday szkoła=school biuro=office niemowlę=baby dzieci=children panna=bride "
    "wesele=wedding ślub=wedding chrzest=christening urodziny=birthday śniadanie=breakfast piknik=picnic "
    "kuchnia=kitchen łazienka=bath grzyby=mushroom_picker grzybiarz=mushroom_picker garncarz=potter krawcowa=sewer",
    "sv": "biodlare=beekeeper trädgårdsmästare=gardener odlare=grower bagare=baker hemmabagare=baker kock=cook "
    "fiskare=angler sportfiskare=angler jägare=hunter vandrare=hiker campare=camper cyklist=cyclist löpare=runner "
    "klättrare=climber simmare=swimmer seglare=sailor ryttare=rider snickare=carpenter hantverkare=handyman "
    "målare=painter murare=mason bonde=farmer herde=shepherd frisör=hairdresser barberare=barber musiker=musician "
    "resa=travel resenär=traveller semester=holiday skola=school kontor=office bebis=baby barn=children brud=bride "
    "brudpar=bride_and_groom bröllop=wedding dop=christening födelsedag=birthday frukost=breakfast fika=coffee_break "
    "picknick=picnic kök=kitchen bad=bath stickare=knitter sömmerska=sewer krukmakare=potter "
    "svampplockare=mushroom_picker",
}
"""Words of other languages for users and uses, with the English one above, where dictionaries give another or none."""

USED_BY: Mapping[str, frozenset[str]] = said_of_goods(_USES)
"""Users, times, places and occasions, each with the goods that are for them."""
_ABROAD_READ = {
    code: {fold(word).replace("-", " "): english.replace("_", " ") for word, english in glossary(text).items()}
    for code, text in _ABROAD.items()
}


def used_abroad(word: str, language: str) -> str:
    """The English word for the user or use that a folded word of a language names; "" if it names none."""
    return _ABROAD_READ.get(language, {}).get(word, "")
