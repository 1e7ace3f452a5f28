import { type Phrase, phraseBook } from './phrase-book.ts';

/** Where numbers come from; titles of works and of codes stay as they are printed. */
const SOURCES: readonly Phrase[] = [
  ['the register', 'el registro'],
  ['geometry', 'geometría'],
  ['statics', 'estática'],
  ['statics of the residual section', 'estática de la sección que queda'],
  ['the steps above', 'los pasos de arriba'],
  ['the three factors multiplied', 'los tres factores multiplicados'],
  ['factors of decay zones 1 to 5', 'factores de las zonas de pudrición 1 a 5'],
  ['floor of the climate factor', 'mínimo del factor de clima'],
  ['clock shift after works', 'corrimiento del reloj después de trabajos'],
  ['yearly cut of the register over the years without guards', 'corte anual del registro por los años sin protectores'],
  [
    'readings of this register, partly pooled with the published value',
    'mediciones de este registro, juntadas en parte con el valor publicado',
  ],
  ['readings and storm outcomes of this fence', 'mediciones y tormentas de esta cerca'],
  ['storm outcomes of this fence', 'tormentas de esta cerca'],
  [
    'storm outcomes of this fence, and what the register learned',
    'tormentas de esta cerca, y lo que aprendió el registro',
  ],
  ['stands in for what is not recorded', 'en lugar de lo que no consta'],
  ['spread from fence to fence of the model', 'dispersión de una cerca a otra, del modelo'],
  ['spread of ln force from storm to storm', 'dispersión de ln fuerza de una tormenta a otra'],
  [
    'convolution of fragility and hazard; survival over the belief',
    'convolución de fragilidad y peligro; supervivencia sobre lo que se cree',
  ],
  [
    'quantiles over the belief points; spreads by judgement',
    'cuantiles sobre los puntos de lo que se cree; dispersiones a criterio',
  ],
  ['definition of standing', 'definición del estado'],
  ['Gumbel, rate form 1/T = exp(-(v - u)/a)', 'Gumbel, en forma de frecuencia 1/T = exp(-(v - u)/a)'],
  [
    'total probability over belief points and post scatter',
    'probabilidad total sobre los puntos de lo que se cree y la dispersión entre postes',
  ],
  ['Gumbel curve through the two entered gusts', 'curva de Gumbel por las dos ráfagas anotadas'],
  ['IBC 1609.3.1 and its table of both speeds', 'IBC 1609.3.1 y su tabla de ambas velocidades'],
  ['Kz at the real height, without the 15 ft floor', 'Kz a la altura real, sin el mínimo de 15 ft'],
  ['ASCE 7-16 Table 26.6-1 (Kd) and 26.11.1 (G)', 'ASCE 7-16, tabla 26.6-1 (Kd) y 26.11.1 (G)'],
  [
    'ASCE 7-16 Table 26.10-1 and 26.11-1: Kz = 2.01 (z/zg)^(2/alpha); alpha, zg read in ASCE 7-05 Table 6-2 as reproduced',
    'ASCE 7-16, tablas 26.10-1 y 26.11-1: Kz = 2.01 (z/zg)^(2/alpha); alpha y zg leídos en ASCE 7-05, tabla 6-2, en reproducción',
  ],
  ['ASCE 7-16 Eq. 26.10-1.si: {}', 'ASCE 7-16, ec. 26.10-1.si: {}'],
  [
    'ASCE 7-16 Figure 29.3-1 (solid freestanding walls), Cases A and C with its notes',
    'ASCE 7-16, figura 29.3-1 (muros sólidos exentos), casos A y C con sus notas',
  ],
  ['ASCE 7-16 Figure 29.3-1, notes', 'ASCE 7-16, figura 29.3-1, notas'],
  [
    'ASCE 7-16 Figure 29.3-1, notes: 1 - (1 - eps)^1.5 for eps >= 0.7',
    'ASCE 7-16, figura 29.3-1, notas: 1 - (1 - eps)^1.5 para eps >= 0.7',
  ],
  [
    'ASCE 7-16 Figure 29.4-2 (open signs, flat-sided), as reproduced in a City of Everett permit calculation, 2022',
    'ASCE 7-16, figura 29.4-2 (letreros abiertos, caras planas), como la reproduce un cálculo de permiso de la ciudad de Everett, 2022',
  ],
  [
    'Peterka & Shahid 1998: V_T / V_50 = 0.36 + 0.1 ln(12 T), non-hurricane; else Gumbel through two entered points',
    'Peterka y Shahid 1998: V_T / V_50 = 0.36 + 0.1 ln(12 T), sin huracanes; si no, Gumbel por dos puntos anotados',
  ],
  [
    'mean 5,000 psi, COV 0.35 for a wet pith-centred No.2 southern pine 4x4; others roughly in the ratio of green clear-wood strength, rounded by judgement',
    'media de 5,000 psi, COV 0.35, para un 4x4 de pino del sur mojado, grado 2, con la médula al centro; los demás más o menos en la proporción de la madera verde limpia, redondeados a criterio',
  ],
  [
    'green shear over bending strength of clear loblolly pine, about 860/7,300 psi, Wood Handbook',
    'corte entre flexión de pino loblolly verde y limpio, unos 860/7,300 psi, Wood Handbook',
  ],
  [
    'IBC 1807.3.2.1, Eq. 18-1 (nonconstrained pole), closed form',
    'IBC 1807.3.2.1, ec. 18-1 (poste sin restricción), en forma cerrada',
  ],
  [
    'Broms 1964, JSMFD 90(SM3): short rigid free-head pile in sand, x 0.8 between pivot statics 0.65 and Broms 1.0',
    'Broms 1964, JSMFD 90(SM3): pilote corto, rígido y de cabeza libre en arena, x 0.8 entre la estática del pivote 0.65 y Broms 1.0',
  ],
  [
    'Broms 1964, JSMFD 90(SM2): short rigid free-head pile in clay',
    'Broms 1964, JSMFD 90(SM2): pilote corto, rígido y de cabeza libre en arcilla',
  ],
  ['typical values of the six classes', 'valores típicos de las seis clases'],
  [
    'IBC 2012 Table 1806.2, as reproduced in Day, Geotechnical Earthquake Engineering Handbook, Table 14.6',
    'IBC 2012, tabla 1806.2, como la reproduce Day, Geotechnical Earthquake Engineering Handbook, tabla 14.6',
  ],
  [
    'NDS 2018 Supplement Tables 4A, 4B, 4D and Table 4.3.1 (southern pine No.2 E and 5x5 Fb read)',
    'NDS 2018, suplemento, tablas 4A, 4B, 4D y tabla 4.3.1 (leídos E de pino del sur grado 2 y Fb de 5x5)',
  ],
  [
    'thin-ring bursting: two walls in tension plus a fixed-end strip, modulus of rupture 7.5 sqrt(fc) at fc = 2,500 psi',
    'reventón de anillo delgado: dos paredes en tensión más una franja empotrada, módulo de rotura 7.5 sqrt(fc) con fc = 2,500 psi',
  ],
  [
    'NDS withdrawal of common nails from side grain, W = 1,380 G^2.5 D lb/in, as reproduced with its worked table',
    'NDS, arranque de clavos comunes de la cara lateral, W = 1,380 G^2.5 D lb/in, en reproducción con su tabla calculada',
  ],
  [
    'Wood Handbook ch. 8: mean ultimate withdrawal of a nail from side grain, P = 7,850 G^2.5 D L lb',
    'Wood Handbook, cap. 8: arranque último medio de un clavo de la cara lateral, P = 7,850 G^2.5 D L lb',
  ],
  [
    'three rails, the middle one takes about half the panel; two 16d common nails, 2 in deep in the post, stand in for want of a record',
    'tres travesaños, el de en medio carga más o menos medio panel; a falta de dato, dos clavos comunes 16d metidos 2 in en el poste',
  ],
  [
    'NDS 2018 Table 12.3.3A, and Wood Handbook for species it does not list',
    'NDS 2018, tabla 12.3.3A, y Wood Handbook para las especies que no trae',
  ],
  [
    'scatter of observed over predicted lives of eight field data sets (0.45), wider where a class has only a bound or an analogy',
    'dispersión de vidas observadas entre previstas en ocho series de campo (0.45), más ancha donde una clase solo tiene una cota o una analogía',
  ],
  [
    'Leicester et al. 2003, IRG/WP 03-20260; Wang, Leicester, Nguyen 2008, Manual No. 3: lag-plus-rate depth law',
    'Leicester et al. 2003, IRG/WP 03-20260; Wang, Leicester, Nguyen 2008, manual núm. 3: ley de profundidad con retraso y ritmo',
  ],
  [
    'Wang, Leicester, Nguyen 2008, Manual No. 3 "Decay in ground contact" (FWPA PN07.1052), climate index',
    'Wang, Leicester, Nguyen 2008, manual núm. 3 (FWPA PN07.1052), índice de clima',
  ],
  [
    'Wang, Leicester, Nguyen 2008, Manual No. 4 "Decay above-ground" (FWPA PN07.1052): depth law, k_wood and zones',
    'Wang, Leicester, Nguyen 2008, manual núm. 4 (FWPA PN07.1052): ley de profundidad, k_wood y zonas',
  ],
  [
    'rails and infill are taken as of the wood and the age of the posts, unpainted, by the median law above ground',
    'travesaños y tablas se toman de la madera y la edad de los postes, sin pintar, por la ley mediana sobre el suelo',
  ],
  ['untreated wood, by definition', 'madera sin tratar, por definición'],
  ['no decay by fungi; corrosion is not modelled', 'los hongos no la pudren; la corrosión no está en el modelo'],
  [
    'between ground-contact and above-ground stock, spread widened',
    'entre la madera para contacto con el suelo y la de sobre el suelo, con más dispersión',
  ],
  [
    'Corvallis post tests, split western redcedar about 23 years',
    'ensayos de postes de Corvallis, cedro rojo del oeste rajado, unos 23 años',
  ],
  [
    'worked out from Miller 1986, Corvallis post tests (read): average life over 30 years, a bound',
    'calculado de Miller 1986, ensayos de postes de Corvallis (leído): vida media de más de 30 años, una cota',
  ],
  [
    'worked out from Miller 1986, Corvallis post tests (read): 0 Osage-orange failed in 52 years, a bound',
    'calculado de Miller 1986, ensayos de postes de Corvallis (leído): 0 naranjos de Osage fallaron en 52 años, una cota',
  ],
  [
    'Bergman 2000, IRG/WP 00-30247, Ultuna treated sawn posts at 13 years, 2.5 mm assumed for rating 2',
    'Bergman 2000, IRG/WP 00-30247, postes aserrados tratados de Ultuna a los 13 años, con 2.5 mm supuestos para la nota 2',
  ],
  [
    'between the sawn pine and the unincised class; Lebow et al. 2018, Maderas 20(3):359 for incising',
    'entre el pino aserrado y la clase sin incisiones; para las incisiones, Lebow et al. 2018, Maderas 20(3):359',
  ],
  [
    'by analogy with copper naphthenate lumber, 27-30 years: {}',
    'por analogía con madera tratada con naftenato de cobre, 27-30 años: {}',
  ],
  ['ground-contact class scaled by retention', 'clase de contacto con el suelo, a escala de la retención'],
  [
    'worked out from {} (read): {} of {} failed in {} years, a bound',
    'calculado de {} (leído): {} de {} fallaron en {} años, una cota',
  ],
  ['worked out from {} (read): time to 50 % failure {} years', 'calculado de {} (leído): el 50 % falla a los {} años'],
  ['worked out from {} (read): estimated {} years', 'calculado de {} (leído): se estiman {} años'],
  [
    'Leicester et al. 2003, IRG/WP 03-20260 (lag-plus-rate model); k_wood constants',
    'Leicester et al. 2003, IRG/WP 03-20260 (modelo de retraso y ritmo); constantes k_wood',
  ],
  ['{}; eight field data sets agree', '{}; ocho series de campo coinciden'],
  ['{}; a remembered 7 years', '{}; 7 años, de memoria'],
  ['{}; durability class {}', '{}; clase de durabilidad {}'],
];

/** Where a number comes from. */
export const sourceInSpanish = phraseBook(SOURCES);
