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
cook chef home_cook kitchen cooking cook_at_home
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
: phone holder, phone mount, cup holder, air freshener, sunshade, car, driving, glove, dashboard, windscreen, vehicle
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
good_night goodnight night_time nighttime bedtime sleep sleeping slumber snooze lullaby
: pyjamas, pillow, mattress, blanket, duvet, herbal tea, nightlight, mask, nightdress, bed, bedding, cot, sheet,
  earplug, night light, light, lamp
festival festival_goer festivalgoer concert gig raver camping_trip
: poncho, tent, raincoat, boot, backpack, earplug, sleeping bag, wellington, bag, blanket, chair, water bottle, hat,
  sunscreen, power bank
dorm dorm_room student student_life freshman freshers uni campus college flatmate
: bedding, bedclothes, towel, caddy, lamp, desk, storage, box, organiser, mug, pan, hanger, notebook, backpack, poster,
  rug, laundry, kettle
galley boat_galley boat narrowboat yacht canal_boat houseboat deck on_board aboard sea_day
: cookware, pan, mug, tableware, plate, cup, anchor, rope, sail, paint, lamp, cushion, cooking pot, stove, fender,
  varnish, bag, towel
truck truck_cab trucker cab lorry lorry_driver long_haul dashboard road_warrior
: mug, flask, cushion, organiser, organizer, curtain, lamp, cooler, cup holder, mattress, blanket, seat cover, kettle
campervan camper_van motorhome caravan vanlife van_life rv van_lifer caravanner tiny_house off_grid
: pan, stove, cookware, mug, plate, chair, table, awning, lamp, storage, mattress, kettle, tableware, cutlery, toilet,
  curtain, hammock, solar, bedding, grill, water bottle
pet_sitter dog_sitter pet_owner pet_parent cat_owner cat_lover cat_mum dog_trainer puppy_trainer dog_groomer groomer
  dog_walker dog_walking puppy_training vet_visit dog_dad kitten kitten_time
: lead, leash, collar, treat, pouch, harness, clipper, brush, bowl, bed, toy, comb, shampoo, litter, crate, bag,
  dog food, cat food, scratching post
bird_watcher birdwatcher birdwatching bird_watching twitcher birder wildlife_watcher stargazer stargazing star_gazer
  astronomer night_sky
: binocular, binoculars, telescope, torch, strap, feeder, tripod, hide, blanket, seed, bird, chair, chart, camera
night_feed night_feeds nightfeed feeding_time nursing nursing_mum breastfeeding weaning first_bites first_foods
  toddler_lunch toddler_time tummy_time potty_training nappy_change
: lamp, baby, bottle, bib, pillow, nightlight, plate, bowl, spoon, cutlery, cup, cloth, muslin, chair, mat, potty,
  nappy, diaper, light
bathtime bath_time bath bath_night bath_day bath_hour shower_time spa_day spa_night self_care pamper_night pamper_day
: sponge, soap, bath, towel, toy, bubble, oil, salt, brush, robe, bathrobe, candle, mat, flannel, tray, pillow,
  mask, lotion, scrub, shampoo
shave shaving shave_day wet_shave morning_shave barbershop beard_day
: shaving, razor, brush, soap, balm, bowl, strop, oil, towel, foam, cream
workout post_workout pre_workout gym gym_day gym_goer training leg_day home_gym yoga yogi pilates spin_class
  cardio stretch stretching weightlifting lifter athlete triathlete cool_down warm_up rest_day
: protein, bar, shake, band, mat, towel, bottle, bag, legging, short, glove, strap, block, dumbbell, kettlebell, chalk,
  shoe, sock, belt, electrolyte, drink, roller, top, vest, cushion, headband, weight, shower gel, deodorant, towel
sewing sewing_room sewing_box quilter quilting dressmaker dressmaking embroiderer embroidery crafter crafting craft_room
  craft_night knitter knitting knitting_night crocheter crochet spinner spinning weaver weaving tailor
: pin, pin cushion, pincushion, needle, thread, scissors, fabric, yarn, wool, hook, hoop, loom, spindle, thimble, tape,
  bag, lamp, kit, button, stand, pattern, bobbin, case, cushion
leather_worker leatherworker leathercraft saddler cobbler shoemaker bootmaker
: awl, leather, thread, needle, punch, knife, mallet, wax, dye, last, tool, polish
woodworker woodcarver spoon_carver carver whittler whittling turner woodturner cabinetmaker joiner luthier
: knife, chisel, gouge, axe, plane, saw, mallet, vice, bench, oil, wax, lathe, sharpening, whetstone, strop, clamp,
  apron, sandpaper, glue, finish
blacksmith farrier welder metalworker jeweller goldsmith silversmith watchmaker
: hammer, anvil, tong, apron, glove, file, forge, torch, plier, loupe, bench, solder, tool, vice
wedding_guest guest occasion special_occasion races ladies_day prom ball cocktail_hour evening_out night_out date_night
  black_tie
: hat, fascinator, dress, clutch, shoe, tie, cufflink, shawl, suit, bag, headpiece, jewellery, earring, wrap, lipstick,
  candle, perfume, glass
left_hander left_handers lefty left_handed southpaw
: scissors, peeler, opener, knife, pen, guitar, golf, ruler, notebook, corkscrew, shears, ladle
coeliac coeliacs celiac celiacs diabetics vegan vegans vegetarian vegetarians allergy_sufferer allergy_sufferers
  lactose_intolerant gluten_intolerant
: bread, biscuit, cake, flour, pasta, chocolate, cheese, cereal, snack, bar, milk, sausage, meal, jam, sweet, pizza,
  cracker, pillow, bedding, mattress
reading reader bookworm book_lover reading_nook reading_corner reading_hour reading_time bedtime_reading study library
  story_time storytime
: lamp, book, light, cushion, bookmark, chair, blanket, bookend, stand, shelf, glasses, pillow, tea, tray, mug
writing writer letter_writer journaling calligraphy
: pen, ink, paper, desk, nib, notebook, lamp, blotter, seal, pencil
siesta nap power_nap snooze sleeping sleepover bedtime lights_out
: mask, blanket, pillow, hammock, cushion, mattress, earplug, pyjamas, curtain, light, lamp, night light, nightlight,
  sofa, tea
potager vegetable_garden kitchen_garden veg_patch vegetable_patch vegetable_plot garden back_garden balcony patio
  terrace greenhouse potting_shed potting allotment_shed window_box windowsill raised_bed rose_garden lawn flower_bed
  hedge weed weeding kneel sowing pruning digging mowing planting repotting
: garden, gardening, hoe, trowel, glove, spade, fork, rake, seed, planter, flowerpot, pot, watering can, shears, hose,
  compost, kneeler, tool, furniture, chair, table, parasol, lantern, shovel, secateurs, mower, fertilizer, fertiliser,
  twine, label, trug, kneeling pad, pad, lamp, grass, hand tool
fishing fishing_trip fishing_day fisherman fisher angler angling carp_fishing lake river
: box, lure, rod, bait, tackle, reel, vest, waistcoat, line, hook, net, boot, chair, tent, flask, hat, knife, bag,
  thermos flask, vacuum flask, tackle box
running runner run race marathon_day trail_runner jogger jogging
: sock, belt, shoe, legging, cap, bar, drink, gel, electrolyte, short, vest, bottle, headlamp, energy bar
hiker hiking walker trekking summit trail_run mountain_day day_out backpacking
: bottle, boot, sock, backpack, rucksack, flask, jacket, pole, bar, snack, towel, mug, stove, map, hat, drinking bottle
travel_companion traveling traveling_companion overnight cabin_bag city_break city_trip business_trip jet_setter
: bag, washbag, toiletry bag, case, pillow, adapter, suitcase, bottle, wallet, pouch, organiser, lock, tag, mug
coffee_break tea_break break_time lunch desk_lunch packed_lunch office_lunch school_lunch lunch_hour elevenses fika
: mug, cup, box, bento, flask, jar, bag, biscuit, tin, cutlery, thermos, bread, cake, saucer, lunch box
baking cookie_baking cake_day
: cutter, tin, whisk, rolling pin, flour, bowl, mould, icing, sprinkle, oven, apron, biscuit cutter, cake, scale, tray
pizza pizza_night pizza_party pasta_night taco_night curry_night sushi_night fondue_night cheese_night movie_night
  film_night games_night game_night poker_night
: stone, baking stone, cutter, oven, dough, peel, flour, sauce, pasta, pot, board, cheese, popcorn, blanket, bowl, card,
  game, snack, knife, mat, dice, board game, spice, shell, tray
brunch sunday_roast sunday_lunch roast_dinner big_breakfast full_english cheeseboard cheese_board apero aperitivo
  brotzeit vesper tapas tapas_night snack_time grazing
: tin, roasting, dish, board, cutting board, gravy, knife, plate, glass, cheese, olive, platter, tray, cracker, pan,
  bowl, chutney, ham, carving
beach seaside beach_bag beach_trip sandcastle sand_castle sand_play beach_games surf surfing paddling snorkel
: pouch, bag, bucket, spade, shovel, towel, windbreak, parasol, ball, hat, sunscreen, sandal, swimsuit, mat, chair,
  cooler, scoop, toy, dry bag
dog_walk muddy_walk muddy_walks muddy_boots muddy_paws country_walk
: boot, scraper, towel, mat, wellington, jacket, coat, brush, dog, sock, tray, raincoat
stocking_filler stocking_fillers secret_santa new_home housewarming house_warming first_home moving_house new_baby
  baby_shower gender_reveal first_year first_birthday naming_day retirement leaving_do farewell get_well thank_you
  teacher_gift hostess_gift mothers_day fathers_day
: toy, candle, mug, card, soap, chocolate, gift, hamper, garland, box, album, bottle opener, book, print, frame, flower,
  plant, tea towel, blanket, keepsake, balloon, cake
bike_commuter bike_commute bike_ride cycle_to_work bikepacker bikepacking gravel_ride mountain_biker roadie touring
  cycle_tour
: trouser, rain, pannier, light, helmet, cape, bag, glove, lock, bell, saddle, jersey, poncho, jacket, backpack
painting sketching drawing decorating watercolour
: brush, paintbrush, easel, canvas, palette, paint, paper, roller, sheet, tape, apron, overall, sketchbook
relaxing relaxation meditation meditating massage
: candle, incense, bath salt, bath, oil, herbal tea, diffuser, cushion, blanket, mat, hammock, pillow, armchair
pregnancy maternity expectant_mother mother_to_be postpartum
: pillow, oil, balm, cream, lotion, tea, legging, bra, dress, belt, jeans, tights, vitamin
winter summer rainy_day rain snow_day autumn spring frost sunny_day
: coat, jacket, glove, hat, scarf, boot, umbrella, sandal, sunhat, tyre, duvet, sock, raincoat, wellington, sledge,
  fleece
"""
"""Users, times, places and occasions (_ for spaces), and after the colon the goods for them: their own words, or what
dictionaries call them."""
_ABROAD = {
    "de": "lesen=reading leseecke=reading_corner lesezeit=reading_time wandern=hiking wandertag=hiking "
    "angeln=fishing laufen=running backen=baking schlafen=sleep baden=bath garten=garden balkon=balcony "
    "camping=camping wohnmobil=campervan linkshänder=left_hander zöliakie=coeliac veganer=vegan "
    "brotzeit=brotzeit strand=beach strandtag=beach_day kaffeepause=coffee_break sport=workout "
    "training=training duschen=shower rasieren=shaving mittagspause=lunch stillen=nursing "
    "schulstart=school einschulung=school hundebesitzer=dog_owner katzenfreund=cat_lover "
    "gartenfreund=gardener gartenfreunde=gardener hochzeitsgast=wedding_guest angler=angler "
    "wanderer=hiker reisen=travel reisebegleiter=travel_companion weg=on_the_go unterwegs=on_the_go "
    "mitnehmen=on_the_go "
    "imker=beekeeper gärtner=gardener hobbygärtner=gardener kleingärtner=gardener bäcker=baker "
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
    "fr": "lecture=reading lire=reading lecteur=reader plage=beach potager=kitchen_garden jardin=garden "
    "balcon=balcony camping=camping pêche=fishing pêcheurs=angler course=running coureurs=running "
    "randonneurs=hiker sport=workout sieste=siesta dormir=sleep dodo=sleep douche=shower rasage=shaving "
    "mer=seaside gauchers=left_hander gaucher=left_hander coeliaques=coeliac véganes=vegan "
    "jardiniers=gardener cuisiniers=cook cuistot=cook pâtissiers=baker bébés=baby maman=new_mum "
    "mamans=new_mum papa=dog_dad maîtresse=teacher nomade=campervan fourgon=campervan van=campervan "
    "invités=guest dîner=dinner déjeuner=lunch apéro=apero couture=sewing tricot=knitting "
    "écriture=writing toilettage=groomer balade=dog_walk promenade=dog_walk voyageurs=traveller "
    "apiculteur=beekeeper jardinier=gardener jardinière=gardener boulanger=baker boulangère=baker "
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
    "es": "lectura=reading leer=reading lector=reader playa=beach huerto=kitchen_garden jardín=garden "
    "balcón=balcony terraza=terrace camping=camping pesca=fishing pescadores=angler correr=running "
    "carrera=running corredores=running senderistas=hiker entrenar=workout entreno=workout "
    "entrenamiento=workout deporte=workout gimnasio=gym siesta=siesta dormir=sleep ducha=shower "
    "afeitado=shaving mar=seaside zurdos=left_hander zurdo=left_hander celíacos=coeliac celíaco=coeliac "
    "celiacos=coeliac veganos=vegan diabéticos=diabetics jardineros=gardener cocineros=cook "
    "cocinillas=cook bebés=baby mamás=new_mum maestra=teacher profes=teacher furgo=campervan "
    "furgoneta=campervan invitados=guest cena=dinner comida=lunch almuerzo=lunch costura=sewing "
    "punto=knitting escritura=writing paseo=dog_walk perros=dog_owner gatos=cat_owner viajeros=traveller "
    "picoteo=snack "
    "apicultor=beekeeper jardinero=gardener hortelano=gardener panadero=baker panadera=baker repostero=baker "
    "cocinero=cook cocinera=cook cocinar=cook pescador=angler cazador=hunter senderista=hiker excursionista=hiker "
    "montañero=climber ciclista=cyclist corredor=runner escalador=climber nadador=swimmer marinero=sailor "
    "jinete=rider carpintero=carpenter manitas=handyman bricolaje=diy albañil=mason pintor=painter "
    "viticultor=winegrower vendimiador=grape_picker vendimia=harvest agricultor=farmer pastor=shepherd "
    "peluquero=hairdresser barbero=barber músico=musician viaje=travel viajero=traveller vacaciones=holiday "
    "escuela=school colegio=school oficina=office bebé=baby niños=children novia=bride novios=bride_and_groom "
    "boda=wedding bautizo=christening cumpleaños=birthday navidad=christmas desayuno=breakfast merienda=snack "
    "picnic=picnic aperitivo=aperitif cocina=kitchen baño=bath tejedora=knitter costurera=sewer alfarero=potter "
    "setero=mushroom_picker",
    "it": "lettura=reading leggere=reading lettore=reader spiaggia=beach orto=kitchen_garden giardino=garden "
    "balcone=balcony terrazzo=terrace campeggio=camping pesca=fishing pescatori=angler corsa=running "
    "corridori=running escursionisti=hiker allenamento=workout sport=workout palestra=gym siesta=siesta "
    "pisolino=nap dormire=sleep nanna=sleep doccia=shower rasatura=shaving mare=seaside "
    "mancini=left_hander celiaci=coeliac vegani=vegan giardinieri=gardener cuochi=cook neonati=baby "
    "mamme=new_mum maestra=teacher furgone=campervan invitati=guest cena=dinner pranzo=lunch "
    "cucito=sewing maglia=knitting scrittura=writing passeggiata=dog_walk cani=dog_owner gatti=cat_owner "
    "viaggiatori=traveller "
    "apicoltore=beekeeper giardiniere=gardener ortolano=gardener panettiere=baker fornaio=baker "
    "pasticciere=baker cuoco=cook cucinare=cook pescatore=angler cacciatore=hunter escursionista=hiker "
    "camminatore=hiker alpinista=climber ciclista=cyclist corridore=runner arrampicatore=climber nuotatore=swimmer "
    "marinaio=sailor cavaliere=rider falegname=carpenter fai-da-te=diy muratore=mason pittore=painter "
    "viticoltore=winegrower vendemmiatore=grape_picker vendemmia=harvest contadino=farmer pastore=shepherd "
    "parrucchiere=hairdresser barbiere=barber musicista=musician viaggio=travel viaggiatore=traveller vacanza=holiday "
    "scuola=school ufficio=office bimbo=baby bimbi=children neonato=newborn sposa=bride sposi=bride_and_groom "
    "nozze=wedding battesimo=christening compleanno=birthday natale=christmas colazione=breakfast merenda=snack "
    "picnic=picnic aperitivo=aperitif cucina=kitchen bagno=bath magliaia=knitter sarta=sewer vasaio=potter "
    "fungaiolo=mushroom_picker nanna=sleep",
    "nl": "lezen=reading leeshoek=reading_corner leesuurtje=reading_time lezer=reader strand=beach "
    "moestuin=kitchen_garden tuin=garden balkon=balcony terras=terrace kamperen=camping vissen=fishing "
    "vissers=angler hardlopen=running hardlopers=running wandelaars=hiker wandelen=hiking sporten=workout "
    "training=training siësta=siesta dutje=nap slapen=sleep douche=shower scheren=shaving zee=seaside "
    "linkshandigen=left_hander coeliakie=coeliac veganisten=vegan tuiniers=gardener koks=cook baby=baby "
    "mama=new_mum juf=teacher camper=campervan gasten=guest avondeten=dinner lunch=lunch naaien=sewing "
    "breien=knitting schrijven=writing hond=dog_owner honden=dog_owner katten=cat_owner "
    "reizigers=traveller onderweg=on_the_go bad=bath badtijd=bath_time "
    "imker=beekeeper tuinier=gardener tuinman=gardener hovenier=gardener bakker=baker thuisbakker=baker "
    "kok=cook hobbykok=cook visser=angler hengelaar=angler jager=hunter wandelaar=hiker kampeerder=camper "
    "fietser=cyclist hardloper=runner klimmer=climber zwemmer=swimmer zeiler=sailor ruiter=rider timmerman=carpenter "
    "klusser=handyman doe-het-zelver=handyman schilder=painter metselaar=mason wijnboer=winegrower boer=farmer "
    "herder=shepherd kapper=hairdresser barbier=barber muzikant=musician reis=travel reiziger=traveller "
    "vakantie=holiday school=school kantoor=office baby=baby kinderen=children bruid=bride bruidspaar=bride_and_groom "
    "bruiloft=wedding doop=christening verjaardag=birthday kerst=christmas ontbijt=breakfast picknick=picnic "
    "borrel=aperitif keuken=kitchen bad=bath breister=knitter naaister=sewer pottenbakker=potter",
    "pt": "leitura=reading ler=reading leitor=reader praia=beach horta=kitchen_garden jardim=garden "
    "varanda=balcony terraço=terrace campismo=camping pesca=fishing pescadores=angler correr=running "
    "corrida=running corredores=running caminhantes=hiker treino=workout treinar=workout desporto=workout "
    "ginásio=gym sesta=siesta dormir=sleep banho=bath duche=shower barba=shaving mar=seaside "
    "canhotos=left_hander celíacos=coeliac veganos=vegan jardineiros=gardener cozinheiros=cook bebés=baby "
    "mamãs=new_mum professora=teacher carrinha=campervan convidados=guest jantar=dinner almoço=lunch "
    "costura=sewing tricô=knitting escrita=writing passeio=dog_walk cães=dog_owner gatos=cat_owner "
    "viajantes=traveller "
    "apicultor=beekeeper jardineiro=gardener padeiro=baker cozinheiro=cook pescador=angler caçador=hunter "
    "caminhante=hiker campista=camper ciclista=cyclist corredor=runner escalador=climber nadador=swimmer "
    "marinheiro=sailor cavaleiro=rider carpinteiro=carpenter pedreiro=mason pintor=painter vinhateiro=winegrower "
    "vindima=harvest agricultor=farmer pastor=shepherd cabeleireiro=hairdresser barbeiro=barber músico=musician "
    "viagem=travel viajante=traveller férias=holiday escola=school escritório=office bebé=baby crianças=children "
    "noiva=bride noivos=bride_and_groom casamento=wedding batizado=christening aniversário=birthday natal=christmas "
    "lanche=snack piquenique=picnic cozinha=kitchen banho=bath costureira=sewer oleiro=potter",
    "pl": "czytanie=reading czytania=reading plaża=beach plażę=beach ogród=garden ogrodu=garden ogródek=garden "
    "balkon=balcony taras=terrace kemping=camping biwak=camping ryby=fishing wędkarzy=angler "
    "wędkarza=angler biegaczy=running biegacza=running bieganie=running biegania=running turystów=hiker "
    "turysty=hiker trening=workout treningu=workout siłownia=gym siłownię=gym drzemka=nap drzemkę=nap "
    "spanie=sleep kąpiel=bath kąpieli=bath prysznic=shower golenie=shaving golenia=shaving "
    "goleniu=shaving morze=seaside leworęcznych=left_hander bezglutenowców=coeliac wegan=vegan "
    "ogrodników=gardener ogrodnika=gardener działkę=garden działki=garden kucharzy=cook niemowląt=baby "
    "niemowlaka=baby mamy=new_mum nauczyciela=teacher gości=guest kolacja=dinner kolację=dinner "
    "obiad=lunch szycie=sewing szycia=sewing druty=knitting pisanie=writing pisania=writing "
    "spacer=dog_walk spaceru=dog_walk psa=dog_owner psów=dog_owner kota=cat_owner kotów=cat_owner "
    "podróży=travel pikniku=picnic szkoły=school dzieci=children "
    "pszczelarz=beekeeper ogrodnik=gardener działkowiec=gardener piekarz=baker kucharz=cook wędkarz=angler "
    "rybak=angler myśliwy=hunter turysta=hiker rowerzysta=cyclist biegacz=runner pływak=swimmer żeglarz=sailor "
    "jeździec=rider cieśla=carpenter stolarz=carpenter majsterkowicz=handyman murarz=mason malarz=painter "
    "winiarz=winegrower rolnik=farmer pasterz=shepherd fryzjer=hairdresser muzyk=musician podróż=travel "
    "podróżnik=traveller wakacje=holiday szkoła=school biuro=office niemowlę=baby dzieci=children panna=bride "
    "wesele=wedding ślub=wedding chrzest=christening urodziny=birthday śniadanie=breakfast piknik=picnic "
    "kuchnia=kitchen łazienka=bath grzyby=mushroom_picker grzybiarz=mushroom_picker garncarz=potter krawcowa=sewer",
    "sv": "läsning=reading läshörna=reading_corner lässtund=reading_time läsglädje=reading strand=beach "
    "köksträdgård=kitchen_garden trädgård=garden trädgården=garden balkong=balcony altan=terrace "
    "camping=camping fiske=fishing löpning=running löprundan=running vandring=hiking träning=workout "
    "träningen=workout gym=gym tupplur=nap sova=sleep bad=bath badet=bath badstund=bath_time dusch=shower "
    "rakning=shaving rakningen=shaving hav=seaside vänsterhänta=left_hander glutenintoleranta=coeliac "
    "veganer=vegan bebisar=baby mamma=new_mum fröken=teacher husbil=campervan gäster=guest middag=dinner "
    "lunch=lunch sömnad=sewing stickning=knitting skrivande=writing promenad=dog_walk promenaden=dog_walk "
    "hundar=dog_owner hunden=dog_owner katten=cat_owner barnen=children fiskaren=angler löparen=running "
    "grill=barbecue grillen=barbecue "
    "biodlare=beekeeper trädgårdsmästare=gardener odlare=grower bagare=baker hemmabagare=baker kock=cook "
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
