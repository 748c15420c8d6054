"""The 45 classes of the Nice Classification, and what belongs in each.

Source: International Classification of Goods and Services for the Purposes of the Registration of Marks (Nice
Agreement), WIPO, 13th edition, in force since 2026, told in our own short words. The official list decides.
"""

from __future__ import annotations

import re

__all__ = ["CLASSES", "EXPLAINED", "is_service", "list_of_classes"]

CLASSES = {
    1: "chemicals for industry, science and agriculture; fertilisers",
    2: "paints, varnishes, dyes and inks",
    3: "cosmetics, soaps, perfumes and cleaning preparations",
    4: "industrial oils and greases, fuels, candles",
    5: "medicines, medical and veterinary preparations, dietary supplements, pest control",
    6: "common metals and goods made of them",
    7: "machines, machine tools, motors and engines",
    8: "hand tools, cutlery and razors",
    9: "software, computers, electronics, scientific and safety apparatus",
    10: "medical, surgical and dental apparatus",
    11: "lighting, heating, cooking, cooling, water and sanitary installations",
    12: "vehicles and their parts",
    13: "firearms, ammunition, explosives and fireworks",
    14: "jewellery, watches, clocks and precious metals",
    15: "musical instruments",
    16: "paper, printed matter, stationery and artists' materials",
    17: "rubber, plastics for manufacture, insulation, flexible pipes",
    18: "leather, bags, luggage and umbrellas",
    19: "building materials, not of metal",
    20: "furniture, mirrors, picture frames, goods of wood and similar materials",
    21: "household and kitchen utensils, glassware, porcelain and earthenware",
    22: "ropes, nets, tents, sacks and raw fibres",
    23: "yarns and threads",
    24: "textiles, bed and table linen",
    25: "clothing, footwear and headwear",
    26: "lace, ribbons, buttons, haberdashery, artificial flowers",
    27: "carpets, mats and wall hangings",
    28: "games, toys and sporting articles",
    29: "meat, fish, dairy products, preserved fruit and vegetables, edible oils",
    30: "coffee, tea, flour, bread, confectionery, sauces and spices",
    31: "raw agricultural and garden products, live plants and animals, animal feed",
    32: "beer, waters, juices and soft drinks",
    33: "wines, spirits and other alcoholic beverages",
    34: "tobacco and smokers' articles",
    35: "advertising, business management, retail services",
    36: "insurance, finance and real estate",
    37: "construction, repair, installation and cleaning services",
    38: "telecommunications",
    39: "transport, storage, packaging and travel arrangement",
    40: "treatment of materials, printing, custom manufacture",
    41: "education, training, entertainment, sport and culture",
    42: "scientific and technical services, software development, design",
    43: "food and drink services, temporary accommodation",
    44: "medical, veterinary, beauty, agricultural and gardening services",
    45: "legal, security, personal and social services",
}
"""Class number -> the subject of its heading, in our own short words."""

EXPLAINED = {
    1: "Chemicals that industry, science, farming and gardening use as they are: fertiliser, potting soil, industrial "
    "glue, raw resin. Medicines are in 5, paints in 2, household glue in 16.",
    2: "What colours or protects a surface: paint, varnish, wood stain, dye, printing ink, rust preventives. Hair dye "
    "is in 3, paint boxes for children in 16.",
    3: "What cleans or cares for people, animals and things without being a medicine: soap, cosmetics, perfume, "
    "room scents, polish, detergent. Medicated preparations are in 5.",
    4: "Fuels, lubricants and lighting materials: candles, wax, firewood, lamp oil, grease. Cooking oils are in 29, "
    "lamps in 11.",
    5: "What treats, prevents or feeds for health: medicines, vitamins, supplements, plasters, baby food, "
    "disinfectants, pest control. Cosmetics are in 3, medical apparatus in 10.",
    6: "Common metal and simple goods of it: nails, hinges, locks, wire, metal boxes, metal building parts. Tools are "
    "in 8, machines in 7, precious metal in 14.",
    7: "Machines and motors driven by power: pumps, drills, mixers, washing machines, 3D printers. Hand tools are in "
    "8, vehicles in 12, heating and cooling in 11.",
    8: "Tools worked by hand: knives, cutlery, scissors, garden tools, razors, tweezers. Power tools are in 7, kitchen "
    "utensils that do not cut in 21.",
    9: "Software to download, computers, electronics, measuring and safety equipment, batteries, magnets. Software "
    "used over a network is in 42, games consoles in 28.",
    10: "Apparatus for doctors, dentists, vets and carers: instruments, supports, hearing aids, massage devices, baby "
    "bottles; since 2026 glasses and sunglasses. Medicines and plasters are in 5.",
    11: "Installations for light, heat, cold, cooking, water and air: lamps, stoves, fridges, kettles, taps, filters. "
    "Pots and pans are in 21, candles in 4.",
    12: "What carries people or goods by land, air or water, and its parts: bicycles, cars, boats, pushchairs, tyres. "
    "Toy vehicles are in 28.",
    13: "Firearms, ammunition, explosives and fireworks. Matches are in 34, toy guns in 28.",
    14: "Jewellery, watches, clocks, precious metals and stones, key rings, jewellery boxes. Cutlery of silver is in "
    "8, smartwatches in 9.",
    15: "Musical instruments, their parts, stands and cases. Recordings are in 9, toy instruments in 28.",
    16: "Paper and card, printed matter, stationery, artists' and teaching materials, wrapping, glue for the home. "
    "Downloadable books are in 9, wallpaper in 27.",
    17: "Rubber and plastics as half-finished material, insulation, seals, flexible pipes, padding. Finished goods go "
    "where their use is.",
    18: "Leather and what is carried: bags, wallets, suitcases, umbrellas; also collars, leads and clothes for "
    "animals. Bags made for one device go with it.",
    19: "Building materials that are not metal: timber, brick, tiles, glass for building, sheds, stone figures. Metal "
    "ones are in 6.",
    20: "Furniture and its parts, mirrors, frames, mattresses, cushions, goods of wood, cork, reed or plastic with no "
    "other place. Bed linen is in 24, lamps in 11.",
    21: "Small things for household and kitchen: pots, cups, vases, planters, brushes, bottles, glass and ceramics. "
    "Cutlery is in 8, electric cookers in 11.",
    22: "Rope, string, nets, tents, sails, sacks, padding and raw fibres. Yarn is in 23, camping furniture in 20.",
    23: "Yarn and thread for making textiles. String is in 22, finished cloth in 24.",
    24: "Cloth and things of cloth for the house: bed linen, towels, curtains, tablecloths, blankets. Clothing is in "
    "25, rugs in 27.",
    25: "Clothing, shoes and headgear for people. Bags are in 18, clothes for animals in 18, protective wear in 9.",
    26: "What is added to clothes and hair, and needlework: buttons, zips, ribbons, hair clips, artificial flowers. "
    "Yarn is in 23, jewellery in 14.",
    27: "What covers floors and walls: carpets, rugs, mats, wallpaper. Wooden floors are in 19, textile wall "
    "hangings in 24.",
    28: "Games, toys and sports equipment, decorations for festive trees. Sports clothing is in 25, game software "
    "in 9.",
    29: "Food from animals, and vegetables and fruit that are kept or prepared: meat, fish, dairy, jam, nuts, edible "
    "oils. Fresh produce is in 31, bakery in 30.",
    30: "Plant food made ready: coffee, tea, flour, bread, cakes, sweets, chocolate, honey, sauces, spices. Teas taken "
    "as a remedy are in 5.",
    31: "Land and sea produce that has not been prepared: fresh fruit and vegetables, seeds, plants, live animals, "
    "animal feed. Planters are in 21.",
    32: "Drinks without alcohol, and beer: water, juice, lemonade, syrups for drinks. Coffee and tea are in 30, wine "
    "and spirits in 33.",
    33: "Drinks with alcohol other than beer: wine, cider, spirits, liqueurs. Beer is in 32.",
    34: "Tobacco, what takes its place, and articles for smokers: pipes, lighters, matches, e-cigarettes.",
    35: "Help in running or promoting someone else's business, and selling: advertising, office work, shops, online "
    "shops. To sell only your own goods you may not need it.",
    36: "Money matters: insurance, banking, payment, property, charitable collections. Accounting is in 35.",
    37: "Building, installing, repairing, cleaning and mining. Making goods to order is in 40.",
    38: "Letting people communicate: telephone, internet access, broadcasting, streaming. The content itself is in 41.",
    39: "Moving and keeping people and goods: transport, delivery, storage, parking, travel arrangement. Booking of "
    "rooms is in 43.",
    40: "Changing or making something for someone else: printing, dyeing, engraving, tailoring, 3D printing to order, "
    "recycling. Repair is in 37.",
    41: "Teaching, entertaining, sport and culture: courses, events, publishing, games played online. Advertising is "
    "in 35.",
    42: "Science, engineering, design, and software made or offered as a service. Software to download is in 9.",
    43: "Food and drink served, and places to stay: cafes, restaurants, catering, hotels, boarding for animals.",
    44: "Care of people, animals and plants: medicine, beauty, massage, veterinary care, gardening, farming.",
    45: "Services for single people's needs that no other class has, and law and safety: legal work, security, "
    "funerals, dating, licensing.",
}
"""Class number -> what belongs there and what does not, in plain words for makers, after the headings and notes of the
13th edition (2026)."""


def is_service(number: int) -> bool:
    """Whether the class holds services (35 to 45)."""
    return number >= 35


def list_of_classes() -> str:
    """Every class with the first words of its subject, in one sentence, and where to ask for more."""
    briefly = (f"{number} {re.split('[,;]', subject)[0]}" for number, subject in CLASSES.items())
    return f"The classes: {', '.join(briefly)}. Which your goods belong to: namescreen classes 'YOUR GOODS'"
